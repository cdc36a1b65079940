"""Question makers about edges and mounting: bevel, groove, holes, size, and the way into the frame."""

from lablib.questions.edges.circumference import SizeByCircumference
from lablib.questions.edges.groove_wall import WallBesideAGroove
from lablib.questions.edges.mounting import EdgeForAFrame
from lablib.questions.edges.off_the_block import OffTheBlock
from lablib.questions.edges.place import BevelPlace
from lablib.questions.edges.strain import StrainSigns
from lablib.questions.edges.touch_up import TouchUp
from lablib.questions.edges.wander import BevelWander

MAKERS = (
    EdgeForAFrame(),
    BevelPlace(),
    BevelWander(),
    WallBesideAGroove(),
    SizeByCircumference(),
    TouchUp(),
    OffTheBlock(),
    StrainSigns(),
)
