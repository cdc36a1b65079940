"""A question about reading a lens: two sharp readings with their lines make the prescription."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.focimeter_reading import SharpLine, prescription_of_readings, sharp_lines
from lablib.optics.focimeter_workings import readings_workings
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.terms import direction_term, power_term
from lablib.questions.answers.prescription import OTHER_FORM, PrescriptionAnswer
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution
from lablib.working import Term

_CYLINDER = "the cylinder from two readings"
_SECOND = Slip(
    name="second-reading-as-cylinder",
    step=_CYLINDER,
    words="You wrote the second reading as the cylinder. The cylinder is the way from the first reading to "
    "the second, with its sign.",
)
_TURNED = Slip(
    name="cylinder-backwards",
    step=_CYLINDER,
    words="You took the second reading from the first. The cylinder is the second less the first, so that "
    "sphere and cylinder together give the second reading again.",
)
_FIRST_LINES = Slip(
    name="axis-off-the-sphere-line",
    step="which lines give the axis",
    words="You took the axis off the lines of the first reading. It lies along the lines that are sharp at "
    "the second, at right angles to those.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingCase:
    """Two readings of one lens, most plus first.

    first, second: the readings with the direction of the lines sharp there.
    """

    first: SharpLine
    second: SharpLine


class FocimeterReading(Maker[ReadingCase]):
    """The prescription of two readings."""

    name = "focimeter-reading"
    lesson = "03"
    skill = "read-a-lens"
    slips = (_SECOND, _TURNED, _FIRST_LINES, OTHER_FORM)

    def draw(self, draws: Draws) -> ReadingCase:
        """Return a toric lens of which neither power is plano."""
        first, second = sharp_lines(draws.until("a toric lens", _draw_lens, _can_be_asked), form="minus")
        return ReadingCase(first=first, second=second)

    def kind(self, case: ReadingCase) -> PrescriptionAnswer:
        """Return the kind: a prescription with minus cylinder."""
        return PrescriptionAnswer(form="minus")

    def answer(self, case: ReadingCase, slips: Set[str] = NONE) -> Prescription:
        """Return the lens, or what a slip in reading it makes of it."""
        rx = prescription_of_readings(case.first, case.second)
        if _SECOND.name in slips:
            rx = replace(rx, cylinder_d=case.second.drum_d)
        if _TURNED.name in slips:
            rx = replace(rx, cylinder_d=-rx.cylinder_d)
        if _FIRST_LINES.name in slips:
            rx = replace(rx, axis_deg=case.first.line_deg)
        return rx.transposed() if OTHER_FORM.name in slips else rx

    def prompt(self, case: ReadingCase) -> tuple[str, ...]:
        """Return the two readings."""
        first, second = (
            f"at {written_power(one.drum_d)} D the lines along {one.line_deg:g} are sharp"
            for one in (case.first, case.second)
        )
        return (
            "An uncut lens lies with its back on the stop of a focimeter; the eyepiece is set and the zero "
            f"is right. First, {first}. Then, {second}. The lens is invented.",
            "Write its prescription with a minus cylinder: both powers with their signs and two decimals, "
            "the axis in whole degrees.",
        )

    def given(self, case: ReadingCase) -> tuple[Term, ...]:
        """Return both readings with their lines."""
        return (
            power_term("P1", case.first.drum_d, "first reading"),
            direction_term("m1", case.first.line_deg, "direction of the lines sharp at the first reading"),
            power_term("P2", case.second.drum_d, "second reading"),
            direction_term("m2", case.second.line_deg, "direction of the lines sharp at the second reading"),
        )

    def solution(self, case: ReadingCase) -> Solution:
        """Return sphere, cylinder and axis."""
        return Solution(
            words=(
                "With the most plus reading first, the cylinder comes out minus. The first reading is the "
                "sphere.",
                "A line is sharp when the power across it is on the drum. The lines sharp second stand "
                "across the meridian of sphere and cylinder together, so they lie along the axis.",
                f"Written out: {self.answer(case)}.",
            ),
            workings=readings_workings(case.first, case.second)[:3],
        )

    def hints(self, case: ReadingCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which of the two readings is the sphere, and how do you know?",
            "The more plus one is the sphere. How far is it from there to the other, and which way?",
            "The axis lies along the lines of one of the readings. Of which?",
        )


def _draw_lens(draws: Draws) -> Prescription:
    return Prescription(
        sphere_d=draws.step(-6.0, 6.0, 0.25),
        cylinder_d=-draws.step(0.5, 3.5, 0.25),
        axis_deg=draws.step(1.0, 180.0, 1.0),
    )


def _can_be_asked(rx: Prescription) -> bool:
    """Whether neither power is plano, and the lines lean."""
    return all((rx.sphere_d, rx.sphere_d + rx.cylinder_d)) and rx.axis_deg not in (90.0, 180.0)
