"""Question makers about cutting: force, arm and torque, turns and time, feeds, water and the test lens."""

from lablib.questions.cutting.arm import LightCutArm
from lablib.questions.cutting.changes import WhichWayTorqueGoes
from lablib.questions.cutting.crib import CribIsACut
from lablib.questions.cutting.feeds import FeedModes
from lablib.questions.cutting.force import CuttingForce
from lablib.questions.cutting.morning import MorningTestLens
from lablib.questions.cutting.peak import WhereThePeakIs
from lablib.questions.cutting.speed import HalfWheelSpeed
from lablib.questions.cutting.time import CutTimeAtLeast
from lablib.questions.cutting.water import WetOrDry
from lablib.questions.cutting.wheel import WheelRimSpeed

MAKERS = (
    WheelRimSpeed(),
    CuttingForce(),
    HalfWheelSpeed(),
    LightCutArm(),
    WhereThePeakIs(),
    WhichWayTorqueGoes(),
    CribIsACut(),
    FeedModes(),
    WetOrDry(),
    CutTimeAtLeast(),
    MorningTestLens(),
)
