"""Questions about prescriptions: writing them, their optical cross, lenses from an addition."""

from lablib.questions.prescription.addition import IntermediateLens, NearLens
from lablib.questions.prescription.cross import CrossToPrescription, PowerOnTheCross
from lablib.questions.prescription.crossed import CrossedCylinders
from lablib.questions.prescription.same import SameLens
from lablib.questions.prescription.writing import SphericalEquivalent, Transpose, TransposeUpright

MAKERS = (
    Transpose(),
    TransposeUpright(),
    SphericalEquivalent(),
    PowerOnTheCross(),
    CrossToPrescription(),
    CrossedCylinders(),
    SameLens(),
    NearLens(),
    IntermediateLens(),
)
"""Questions on prescriptions: forms, equivalent, cross, crossed cylinders, lenses for near and between."""
