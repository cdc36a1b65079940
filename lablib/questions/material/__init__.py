"""Questions about materials: index, colour, weight, reflections, toughness, coats, and what goes together."""

from lablib.questions.material.colour import ColourFringe
from lablib.questions.material.factor import CurveFactor
from lablib.questions.material.filter import FilterTurned
from lablib.questions.material.light import SurfaceReflectance, TransmittedLight
from lablib.questions.material.most_colour import MostColour
from lablib.questions.material.saving import IndexSaving
from lablib.questions.material.steps import OperationsOrder
from lablib.questions.material.thickness import SafetyThickness
from lablib.questions.material.tough import TougherMaterial
from lablib.questions.material.unfit import DecideOrder, RefuseUnfit
from lablib.questions.material.wearer import MaterialForWearer
from lablib.questions.material.weight import LensWeight, LighterLens

MAKERS = (
    IndexSaving(),
    CurveFactor(),
    ColourFringe(),
    MostColour(),
    TougherMaterial(),
    LensWeight(),
    LighterLens(),
    SurfaceReflectance(),
    TransmittedLight(),
    SafetyThickness(),
    OperationsOrder(),
    FilterTurned(),
    RefuseUnfit(),
    DecideOrder(),
    MaterialForWearer(),
)
