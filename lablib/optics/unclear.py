"""Prescriptions that must be held: what is missing, and the question to ask before anything is cut.

Which faults send a ticket back is common practice, no source.
"""

from lablib.errors import LabError


class UnclearPrescription(LabError):
    """A prescription that cannot be made before somebody has answered a question.

    name: a stable name for programs.
    question: what to ask the prescriber, in plain words.
    as_written: the text or the numbers in question.
    others: further things unclear in the same prescription, so that one call asks them all.
    """

    name = "unclear-prescription"

    def __init__(self, text: str, *, question: str, as_written: str) -> None:
        super().__init__(text)
        self.question = question
        self.as_written = as_written
        self.others: tuple[UnclearPrescription, ...] = ()


class SignMissing(UnclearPrescription):
    """A power written without plus or minus."""

    name = "sign-missing"

    def __init__(self, part: str, power: str, *, as_written: str) -> None:
        super().__init__(
            f"{part} {power} has no sign: a power is written with + or -; ask the prescriber which it is",
            question=f"Is the {part} {power} plus or minus?",
            as_written=as_written,
        )


class PointMissing(UnclearPrescription):
    """A power of two or more figures without a decimal point, which may be dioptres or hundredths."""

    name = "point-missing"

    def __init__(self, part: str, power: str, *, as_written: str) -> None:
        super().__init__(
            f"{part} {power} has no decimal point, so it may be dioptres or hundredths: "
            "write it with two decimals, as in -2.25",
            question=f"The {part} is written {power}: where does the decimal point stand?",
            as_written=as_written,
        )


class AxisMissing(UnclearPrescription):
    """A cylinder written without its axis."""

    name = "cylinder-without-axis"

    def __init__(self, cylinder: str, *, as_written: str) -> None:
        super().__init__(
            f"cylinder {cylinder} has no axis: it cannot be made without one; ask the prescriber",
            question=f"What is the axis of the cylinder {cylinder}?",
            as_written=as_written,
        )


class AxisWithoutCylinder(UnclearPrescription):
    """An axis written where there is no cylinder."""

    name = "axis-without-cylinder"

    def __init__(self, axis: str, *, as_written: str) -> None:
        super().__init__(
            f"axis {axis} stands without a cylinder: only a cylinder has an axis; ask the prescriber whether "
            "a cylinder was left out",
            question=f"There is an axis {axis} but no cylinder: was a cylinder left out?",
            as_written=as_written,
        )


class BaseMissing(UnclearPrescription):
    """A prism written without its base direction."""

    name = "prism-without-base"

    def __init__(self, amount: str, *, as_written: str) -> None:
        super().__init__(
            f"prism {amount} has no base direction: it cannot be made without one; ask the prescriber",
            question=f"Which way does the base of the prism {amount} point?",
            as_written=as_written,
        )
