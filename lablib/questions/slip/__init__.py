"""Questions about slip: margin and chance, signs and causes, what helps first, and what is never done."""

from lablib.questions.slip.cause import WhichCause
from lablib.questions.slip.chance import ChanceOfSlip
from lablib.questions.slip.gains import GainsMultiply
from lablib.questions.slip.left_over import CylinderLeftOver
from lablib.questions.slip.margin import CutMargin
from lablib.questions.slip.marks import SegmentTopTurned, TurnFromMarks
from lablib.questions.slip.remedy import RemedyFirst
from lablib.questions.slip.sign import EarlyOrLate, WhichSign
from lablib.questions.slip.told import NeverAgainstSlip, TurnedSphere
from lablib.questions.slip.turned_prism import TurnedSpherePrism
from lablib.questions.slip.where import WrongAxisWhere

MAKERS = (
    CutMargin(),
    ChanceOfSlip(),
    TurnFromMarks(),
    SegmentTopTurned(),
    GainsMultiply(),
    CylinderLeftOver(),
    TurnedSpherePrism(),
    WhichSign(),
    EarlyOrLate(),
    WhichCause(),
    RemedyFirst(),
    WrongAxisWhere(),
    TurnedSphere(),
    NeverAgainstSlip(),
)
