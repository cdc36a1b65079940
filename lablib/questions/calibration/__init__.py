"""Questions about the calibration of a bench: the line, its errors, the jig, and what may be claimed."""

from lablib.questions.calibration.line import GripFriction, GripShear
from lablib.questions.calibration.scrap import ScrapForForce
from lablib.questions.calibration.sure import FitInterval, ReadingsNeeded
from lablib.questions.calibration.told import ReadingsVerdict, WhatMayBeClaimed

MAKERS = (
    GripFriction(),
    GripShear(),
    FitInterval(),
    ReadingsNeeded(),
    ScrapForForce(),
    ReadingsVerdict(),
    WhatMayBeClaimed(),
)
