"""Questions about multifocals: segments and their blanks, imbalance at near, progressives and their marks."""

from lablib.questions.multifocals.addition_side import AdditionSide
from lablib.questions.multifocals.blank import SegmentBlankCentre
from lablib.questions.multifocals.cross import CrossInset
from lablib.questions.multifocals.engravings import EngravingLevel
from lablib.questions.multifocals.fitting_height import FittingHeight
from lablib.questions.multifocals.imbalance import NearImbalanceBifocal
from lablib.questions.multifocals.imbalance_decision import NearImbalanceDecision
from lablib.questions.multifocals.jump import ImageJump
from lablib.questions.multifocals.made_to import MadeToDistance, MadeToHeight
from lablib.questions.multifocals.re_mark import ReMarkCross
from lablib.questions.multifocals.remake import RemakeOne
from lablib.questions.multifocals.segment_top import SegmentTop
from lablib.questions.multifocals.total_inset import TotalInset
from lablib.questions.multifocals.unequal_heights import UnequalHeights

MAKERS = (
    SegmentTop(),
    TotalInset(),
    ImageJump(),
    SegmentBlankCentre(),
    UnequalHeights(),
    NearImbalanceBifocal(),
    NearImbalanceDecision(),
    CrossInset(),
    EngravingLevel(),
    FittingHeight(),
    ReMarkCross(),
    MadeToDistance(),
    MadeToHeight(),
    RemakeOne(),
    AdditionSide(),
)
