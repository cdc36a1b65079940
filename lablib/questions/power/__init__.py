"""Questions about power in place: focal length, meridians, vertex distance, magnification, the focimeter."""

from lablib.questions.power.focal import FocalLength
from lablib.questions.power.focimeter import FocimeterReading
from lablib.questions.power.formula import WhichFormula
from lablib.questions.power.magnified import Magnified
from lablib.questions.power.meridian import PowerInMeridian
from lablib.questions.power.vertex import VertexSphere
from lablib.questions.power.vertex_toric import VertexToric

MAKERS = (
    FocalLength(),
    PowerInMeridian(),
    VertexSphere(),
    VertexToric(),
    WhichFormula(),
    Magnified(),
    FocimeterReading(),
)
