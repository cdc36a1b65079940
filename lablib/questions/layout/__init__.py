"""Questions about layout: the box, the wearer's distances, where the optical centre lies, and the blank."""

from lablib.questions.layout.blank import LeastBlankRule
from lablib.questions.layout.decentration import Decentration
from lablib.questions.layout.exact_blank import LeastBlankExact
from lablib.questions.layout.frame_work import FrameWorkOrder
from lablib.questions.layout.height import CentrationHeight, HeightAfterAdjusting
from lablib.questions.layout.near import NearDistance
from lablib.questions.layout.near_inset import NearInset
from lablib.questions.layout.read_box import ReadTheBox
from lablib.questions.layout.read_trace import ReadATrace
from lablib.questions.layout.read_wearer import ReadTheWearer
from lablib.questions.layout.which_blank import WhichBlank

MAKERS = (
    Decentration(),
    LeastBlankRule(),
    ReadTheBox(),
    ReadTheWearer(),
    CentrationHeight(),
    HeightAfterAdjusting(),
    NearDistance(),
    NearInset(),
    LeastBlankExact(),
    WhichBlank(),
    ReadATrace(),
    FrameWorkOrder(),
)
