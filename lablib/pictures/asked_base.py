"""What all drawings of questions share: the case, and the learner's and the right value in it."""

from abc import abstractmethod
from collections.abc import Iterator, Mapping
from dataclasses import MISSING, dataclass, fields
from types import MappingProxyType
from typing import ClassVar, TypeVar

import numpy as np

from lablib.errors import LabError, require_finite
from lablib.pictures.asked_sign import RIGHT, YOURS, Sign, Stand, boxes_along
from lablib.pictures.captions import HEADING_PT, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.window import Box, Window, place
from lablib.working import plain

CaseT = TypeVar("CaseT")
# A number, or a prism: its parts base in and base up.
Value = float | tuple[float, float]
# The strips above and below a drawing hold its heading and its key.
HEADING_Y_PX, KEY_Y_PX, ASIDE_PX = 287.0, 13.0, 10.0
# The drawing itself: left, bottom, right, top; its size; and how far from its rim an arrow stands.
BOX_PX: Box = (4.0, 26.0, 476.0, 276.0)
WIDE_PX, HIGH_PX, RIM_PX = 472.0, 250.0, 12.0
# Where the right end of a scale bar stands.
BAR_PX = (424.0, KEY_Y_PX)
_APART_PX = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the picture of a question shows now.

    values: of the drawing, from `lablib.study.question.Drawing.values`.
    given: the learner's value as it was understood, or where the marker stands [unit of the answer]; a
        number, or for a prism its parts base in and base up; None for none.
    right: the right value, once the question was answered [unit of the answer]; None before.
    is_over: whether the question is over, so that what was kept back is shown; where the answer is picked,
        this alone tells.

    Raises LabError for a given or right value that is not a finite number, or two of them.
    """

    values: Mapping[str, object]
    given: Value | None = None
    right: Value | None = None
    is_over: bool = False

    def __post_init__(self) -> None:
        object.__setattr__(self, "values", MappingProxyType(dict(self.values)))
        for name in ("given", "right"):
            value = getattr(self, name)
            if value is not None:
                object.__setattr__(self, name, _finite(f"{name} value of a picture", value))


class AskedPicture(KeptPicture):
    """A picture of a question's case, with the learner's value and, once it was answered, the right one.

    case: class of the values, a dataclass with a field for each.
    unit, digits: of the answer: its unit as it is written, and decimals to print.

    A subclass gives `add_case`, which adds the window and the artists of the case, `show_case`, which sets
    them, and `stand`, which says where a value stands. Its scale follows from the case alone, so that
    nothing jumps when an answer comes.
    """

    width_px = 480
    height_px = 300
    case: ClassVar[type]
    unit: ClassVar[str]
    digits: ClassVar[int]
    window: Window

    def build(self) -> None:
        """Add the window, the artists of the case, and the two signs."""
        # Boxes of words and marks in the order in which they are placed, and of lines.
        self.taken: list[Box] = []
        self.drawn: list[Box] = []
        self.add_case()
        self.yours, self.right = Sign(self.window, YOURS), Sign(self.window, RIGHT)

    def update(self, data: Asked) -> None:
        """Draw a case, the learner's value in it, and the right one.

        data: what to show.

        Raises LabError for values that the drawing cannot show.
        """
        case = read_case(self.case, data.values)
        self.taken.clear()
        self.drawn.clear()
        self.show_case(case, data)
        # Words of the case and of an answer must not be read as one line.
        self.taken[:] = [
            (left - _APART_PX, low, right + _APART_PX, top) for left, low, right, top in self.taken
        ]
        shown = [self._show(case, *one) for one in self._values(data)]
        # The right one has the first choice of a place.
        for sign, stand, words in reversed(shown):
            place(sign.label, words, stand.spots, **self.space)

    def _values(self, data: Asked) -> Iterator[tuple[Sign, str, Value]]:
        """Yield the sign of every value that is shown, whose it is, and the value."""
        both = None not in (data.given, data.right) and self.same(data.given, data.right)
        self.yours.hide()
        self.right.hide()
        if data.given is not None and not both:
            yield self.yours, "yours", data.given
        if data.right is not None:
            yield self.right, "right, and yours" if both else "right answer", data.right

    def _show(self, case: object, sign: Sign, name: str, value: Value) -> tuple[Sign, Stand, str]:
        """Draw a value, and return what is needed to write its words once both are drawn."""
        stand = self.stand(case, value, sign is self.right)
        self.taken.append(sign.show(stand))
        self.fence(stand.line)
        return sign, stand, self.words(name, value, stand)

    def add_window(self, *, up_px: float, across_px: float = WIDE_PX / 2.0) -> None:
        """Add the window of the drawing.

        up_px, across_px: where its zero lies, from the window's lower left corner [shown px].
        """
        self.window = Window(self, BOX_PX, across_px=across_px, up_px=up_px)

    def heading(self, words: str) -> None:
        """Write a heading that stays.

        words: the line.
        """
        write_still(self, (ASIDE_PX, HEADING_Y_PX), words, size=HEADING_PT)

    @property
    def space(self) -> dict[str, object]:
        """Where words may stand and what they must not cover, for `lablib.pictures.window.place`."""
        return {"inside": BOX_PX, "taken": self.taken, "drawn": self.drawn}

    def fence(self, line: np.ndarray) -> None:
        """Have words keep off a line where they can.

        line: shape (N, 2) [units of the window].
        """
        self.drawn += boxes_along(self.window, line)

    @abstractmethod
    def add_case(self) -> None:
        """Add the window, the heading, and the artists of the case."""

    @abstractmethod
    def show_case(self, case: object, data: Asked) -> None:
        """Set the artists of the case, and add what words must keep off to `taken` and `drawn`.

        case: the values, checked; data: what else is shown now.
        """

    @abstractmethod
    def stand(self, case: object, value: Value, right: bool) -> Stand:
        """Return where a value stands in the drawing as it was last set.

        case: the values, checked.
        value: of the learner, or the right one [unit of the answer].
        right: whether it is the right one.
        """

    def same(self, one: Value, other: Value) -> bool:
        """Return whether two values are closer than anyone could see or read here.

        one, other: [unit of the answer].
        """
        return abs(one - other) <= 0.5 * 10.0**-self.digits

    def words(self, name: str, value: Value, stand: Stand) -> str:
        """Return what is written beside a value.

        name: whose it is; value: [unit of the answer]; stand: where it stands.
        """
        return stand.beyond(name) if stand.off else f"{name} {plain(value, self.digits)} {self.unit}"


def _finite(thing: str, value: object) -> Value:
    if isinstance(value, tuple) and len(value) == 2:
        return tuple(require_finite(thing, part) for part in value)
    return require_finite(thing, value)


def read_case(case: type[CaseT], values: Mapping[str, object]) -> CaseT:
    """Return values as the case they describe.

    case: a dataclass; values: one for each of its fields, those with a default may be missing.

    Raises LabError for a name that is missing or unknown, and as the case does.
    """
    wanted = [field for field in fields(case) if field.init]
    names = {field.name for field in wanted}
    needed = {field.name for field in wanted if field.default is MISSING}
    for wrong, fault in ((sorted(needed - set(values)), "missing"), (sorted(set(values) - names), "unknown")):
        if wrong:
            raise LabError(
                f"values of a drawing: {wrong[0]!r} is {fault}: give {', '.join(sorted(names))} and no other"
            )
    return case(**values)


def short(value: float) -> str:
    """Return a number of the case as it is written in the drawing, without needless decimals.

    value: the number.
    """
    return f"{round(value, 2):.10g}"
