"""Question makers about blocking: what holds, which block and where, and what is done before and after."""

from lablib.questions.blocking.block_curve import BlockCurveGap
from lablib.questions.blocking.clamp import ClampCap
from lablib.questions.blocking.clears import BlockClearsTheFrame
from lablib.questions.blocking.condition import JointInItsCondition
from lablib.questions.blocking.key import KeyPlay
from lablib.questions.blocking.layer import GripLayer
from lablib.questions.blocking.order import BlockingOrder
from lablib.questions.blocking.smaller_block import SmallerBlock
from lablib.questions.blocking.tip import TipOnItsBack
from lablib.questions.blocking.weakest import WeakestJoint
from lablib.questions.blocking.where import WhereToBlock

MAKERS = (
    BlockingOrder(),
    GripLayer(),
    WhereToBlock(),
    BlockClearsTheFrame(),
    SmallerBlock(),
    JointInItsCondition(),
    BlockCurveGap(),
    ClampCap(),
    TipOnItsBack(),
    KeyPlay(),
    WeakestJoint(),
)
