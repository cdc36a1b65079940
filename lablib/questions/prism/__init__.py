"""Questions about prism: at a point, by decentration, put together, split, and between the eyes."""

from lablib.questions.prism.base import BaseInDegreesMaker
from lablib.questions.prism.between import BetweenTheEyes
from lablib.questions.prism.centres import CentresTooWide
from lablib.questions.prism.combining import Resolving, Resultant
from lablib.questions.prism.decentring import DecentrationForAPrism
from lablib.questions.prism.near import NearImbalance
from lablib.questions.prism.point import PrismAtAPoint, PrismAtAPointToric
from lablib.questions.prism.slab import SlabOffEye
from lablib.questions.prism.splitting import Split
from lablib.questions.prism.thickness import ThicknessDifference
from lablib.questions.prism.thinning import ThinningPrism

MAKERS = (
    PrismAtAPoint(),
    PrismAtAPointToric(),
    DecentrationForAPrism(),
    Resultant(),
    Resolving(),
    BaseInDegreesMaker(),
    Split(),
    BetweenTheEyes(),
    CentresTooWide(),
    NearImbalance(),
    SlabOffEye(),
    ThinningPrism(),
    ThicknessDifference(),
)
