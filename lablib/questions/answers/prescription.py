"""An answer that is a prescription, on one line or in boxes, in the cylinder form that is asked for."""

from dataclasses import dataclass, replace
from typing import ClassVar

from lablib.errors import LabError, require_between, require_one_of
from lablib.optics.prescription import Prescription
from lablib.optics.unclear import UnclearPrescription
from lablib.questions.answers.prescription_line import (
    BOXES,
    Lens,
    Past180,
    for_learner,
    line_of_boxes,
    understood_line,
)
from lablib.study.answer import Given, NotUnderstood, Understood
from lablib.study.marker import way_round
from lablib.study.question import Slip

FORMS = ("minus", "plus", "either")
# For makers that ask for one form: the right lens, written in the other, is a mistake with a name.
OTHER_FORM = Slip(
    name="other-form",
    step="the sign the cylinder is asked to have",
    words="This is the same lens, in the other form.",
)

# Half of the last figure as prescriptions are written: two decimals of a power, whole degrees of an axis.
_FINEST_D, _WIDEST_D = 0.005, 1.0
_FINEST_DEG, _WIDEST_DEG = 0.5, 45.0
_SLACK, _HALF_TURN_DEG = 1e-9, 180.0
_HOW = 'write one line like "+2.00 -1.50 x 090"'


@dataclass(frozen=True, slots=True, kw_only=True)
class PrescriptionAnswer:
    """A prescription; its value is a `Prescription`, or `Past180` where the axis goes too far.

    form: "minus" or "plus", the sign the cylinder must have; "either" where any writing of the lens will do.
    tolerance_d: how far off sphere, cylinder and addition still count as the same [D], from 0.005.
    axis_tolerance_deg: the same for the axis [degrees], from 0.5.
    addition: whether an addition belongs to the answer.

    Where a form is asked for, the lens in the other form is not right; makers name it with `OTHER_FORM`.

    Raises LabError for another form or a tolerance out of range.
    """

    name: ClassVar[str] = "prescription"
    form: str
    tolerance_d: float = _FINEST_D
    axis_tolerance_deg: float = _FINEST_DEG
    addition: bool = False

    def __post_init__(self) -> None:
        require_one_of("form", self.form, FORMS)
        require_between("tolerance", self.tolerance_d, low=_FINEST_D, high=_WIDEST_D, unit="D")
        require_between(
            "axis tolerance", self.axis_tolerance_deg, low=_FINEST_DEG, high=_WIDEST_DEG, unit="degrees"
        )

    @property
    def boxes(self) -> tuple[str, ...]:
        """The names of the boxes an answer can be given in, in place of one line."""
        return BOXES if self.addition else BOXES[:3]

    def is_blank(self, given: Given) -> bool:
        """Return whether nothing has been written yet, neither on the line nor in a box."""
        return all(map(_is_empty, given)) if isinstance(given, list) else _is_empty(given)

    def read(self, given: Given) -> Understood[Lens]:
        """Return the lens an answer means; without a sign, all lenses it can mean.

        given: a text such as "+2.00 -1.50 x 090", or a list of the texts of the boxes: sphere, cylinder,
            axis, and the addition where it belongs to the answer.

        Raises NotUnderstood with the way to write it.
        """
        try:
            line = self._line(given) if isinstance(given, list) else given
            if not isinstance(line, str):
                raise LabError(f"this is not text: {_HOW}")
            return self._with_notes(understood_line(line))
        except UnclearPrescription as unclear:
            raise NotUnderstood(for_learner(unclear)) from None
        except LabError as fault:
            raise NotUnderstood(str(fault)) from None

    def matches(self, value: Lens, other: object) -> bool:
        """Return whether a lens is the same within the tolerances, in the form asked for."""
        return self._are_near(value, other, 1.0)

    def apart(self, one: object, other: object) -> bool:
        """Return whether two lenses differ by more than twice the tolerances."""
        return not self._are_near(one, other, 2.0)

    def written(self, value: Lens) -> str:
        """Return a lens as it is written on a ticket, in the form it has."""
        return str(value)

    def _line(self, given: list) -> str:
        names = self.boxes if len(given) == len(self.boxes) else self.boxes[:3]
        if len(given) != len(names):
            raise LabError(
                f"a list of {len(given)} is not a text for each box: give {', '.join(self.boxes)}, or {_HOW}"
            )
        pairs = zip(names, given, strict=True)
        return line_of_boxes({name: text for name, text in pairs if not _is_empty(text)})

    def _with_notes(self, found: Understood[Lens]) -> Understood[Lens]:
        lenses = [_lens(value) for value in found.meanings]
        notes = [*found.notes]
        if self.form != "either" and all(lens.in_form(self.form) != lens for lens in lenses):
            form = "plus" if self.form == "minus" else "minus"
            notes.append(f"the cylinder is {form}, and the {self.form}-cylinder form is asked for")
        if bool(lenses[0].addition_d) != self.addition:
            notes.append("no addition was read" if self.addition else "no addition is asked for")
        return replace(found, notes=tuple(notes))

    def _are_near(self, one: object, other: object, share: float) -> bool:
        if isinstance(one, Past180) != isinstance(other, Past180):
            return False
        first, second = _lens(one), _lens(other)
        if self._agree(first, second, share):
            return True
        if self.form != "either":
            return False
        return self._agree(first.transposed(), second, share) or self._agree(
            first, second.transposed(), share
        )

    def _agree(self, one: Prescription, other: Prescription, share: float) -> bool:
        near_d = share * self.tolerance_d + _SLACK
        off_d = (
            one.sphere_d - other.sphere_d,
            one.cylinder_d - other.cylinder_d,
            one.addition_d - other.addition_d,
        )
        if max(map(abs, off_d)) > near_d:
            return False
        if min(abs(one.cylinder_d), abs(other.cylinder_d)) <= near_d:
            # A cylinder that cannot be told from none has no axis to compare.
            return True
        away = way_round(one.axis_deg, other.axis_deg, whole=_HALF_TURN_DEG)
        return away <= share * self.axis_tolerance_deg + _SLACK


def _lens(value: object) -> Prescription:
    return value.lens if isinstance(value, Past180) else value


def _is_empty(text: object) -> bool:
    return text is None or (isinstance(text, str) and not text.strip())
