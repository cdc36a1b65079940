"""Questions about prescriptions: writing them, and what they amount to."""

from lablib.questions.prescription.writing import SphericalEquivalent, Transpose

MAKERS = (Transpose(), SphericalEquivalent())
