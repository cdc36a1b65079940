"""The morning's test lens, as a question: what is set right after it was read."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.morning import MorningLens
from lablib.bench.parameter import default
from lablib.optics.terms import direction_term, distance_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_OKAY, _AXIS, _SIZE, _SHAPE = "okay", "axis", "size", "shape"
_ONWARDS = "onwards"
_STEP = "which way a setting is changed"
_READ_STEP = "what the readings say"
_FORWARD = Slip(
    name="set-the-same-way",
    step=_STEP,
    words="You changed the setting the way the lens is off already. The next one would be off by twice as "
    "much.",
)
_DOUBTED = Slip(
    name="good-lens-doubted",
    step=_READ_STEP,
    words="You turned the axis after a lens that is within its limits. Whoever follows every reading "
    "makes the machine worse.",
)
_SIZE_DOUBTED = Slip(
    name="good-size-doubted",
    step=_READ_STEP,
    words="You changed the size after a lens that is within its limits. What is set right without need is "
    "off the next morning.",
)
_PASSED = Slip(
    name="fault-let-through",
    step=_READ_STEP,
    words="You left the machine as it is. Every lens of the day would be off by as much.",
)
_OTHER = Slip(
    name="another-setting-touched",
    step=_READ_STEP,
    words="You touched a setting that the readings do not speak against.",
)
_CALLED = Slip(
    name="called-too-soon",
    step=_READ_STEP,
    words="You had the machine looked at. Width and height agree in what they are off: nothing is worn or "
    "bent that a setting does not reach.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MorningCase:
    """A test lens that was read, and keys of the options in the order shown."""

    lens: MorningLens
    shown: tuple[str, ...]

    @property
    def fault(self) -> str:
        """The one thing to be set right, or "okay"."""
        return next(iter(self.lens.adjust), _OKAY)


class MorningTestLens(Maker[MorningCase]):
    """Say what is set right after the morning's test lens."""

    name = "morning-lens"
    lesson = "11"
    skill = "test-lens"
    slips = (_FORWARD, _DOUBTED, _SIZE_DOUBTED, _PASSED, _OTHER, _CALLED)

    def draw(self, draws: Draws) -> MorningCase:
        """Return a lens that is off in one thing, or in none."""
        fault = draws.one_of((_OKAY, _AXIS, _AXIS, _SIZE, _SIZE, _SHAPE))
        lens = draws.until("a test lens", lambda some: _lens(some, fault), lambda one: _has(one, fault))
        return MorningCase(lens=lens, shown=draws.shuffled(_offered(fault)))

    def kind(self, case: MorningCase) -> ChoiceAnswer:
        """Return what can be done."""
        return ChoiceAnswer(options=tuple(Option(key=key, words=_words(case, key)) for key in case.shown))

    def slips_in(self, case: MorningCase) -> tuple[Slip, ...]:
        """Return one slip for every wrong option."""
        return {
            _OKAY: (_DOUBTED, _SIZE_DOUBTED),
            _AXIS: (_FORWARD, _PASSED, _OTHER),
            _SIZE: (_FORWARD, _PASSED, _OTHER, _CALLED),
            _SHAPE: (_PASSED, _OTHER),
        }[case.fault]

    def answer(self, case: MorningCase, slips: Set[str] = NONE) -> str:
        """Return what the readings ask for, or what a slip leads to."""
        if not slips:
            return case.fault
        other = {_AXIS: _SIZE, _SIZE: _AXIS, _SHAPE: _SIZE}
        leads = {
            _FORWARD.name: _ONWARDS,
            _DOUBTED.name: _AXIS,
            _SIZE_DOUBTED.name: _SIZE,
            _PASSED.name: _OKAY,
            _OTHER.name: other.get(case.fault, _OKAY),
            _CALLED.name: _SHAPE,
        }
        return leads[next(iter(slips))]

    def pairs(self, case: MorningCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: MorningCase) -> tuple[str, ...]:
        """Return what was cut, read and is asked."""
        axis, size = default("test_axis_deg"), default("test_size_mm")
        return (
            "In an invented lens room a test lens is cut each morning. It may be off by "
            f"{axis:g} degree in axis and {size:g} mm in size, and width and height may disagree by "
            f"{size:g} mm; within that the machine is left alone. This is what was set, and what the lens "
            "shows. The axis is read anticlockwise, with the lens level.",
            "What do you do?",
        )

    def given(self, case: MorningCase) -> tuple[Term, ...]:
        """Return settings and readings."""
        lens = case.lens
        return (
            direction_term("X_set", lens.axis_set_deg, "axis that was set"),
            direction_term("X", lens.axis_read_deg, "axis of the lens"),
            distance_term("A_set", lens.width_set_mm, "width that was set"),
            distance_term("A", lens.width_read_mm, "width of the lens"),
            distance_term("B_set", lens.height_set_mm, "height that was set"),
            distance_term("B", lens.height_read_mm, "height of the lens"),
        )

    def solution(self, case: MorningCase) -> Solution:
        """Return what is off, and what follows."""
        lens = case.lens
        off = (
            f"Axis off by {_signed(lens.axis_off_deg, 'degrees', 1)}, width by "
            f"{_signed(lens.width_off_mm, 'mm', 2)}, height by {_signed(lens.height_off_mm, 'mm', 2)}."
        )
        why = {
            _OKAY: "All of it is within the limits. The reading is written into the log, and nothing is "
            "touched.",
            _AXIS: "The axis is off and the size is not: the axis setting goes back by as much.",
            _SIZE: "Width and height are off by the same: the size setting goes the other way by as much.",
            _SHAPE: "Width and height are off by different amounts. No size setting cures both.",
        }[case.fault]
        return Solution(words=(off, why, "After any change another test lens is cut, and it is read again."))

    def hints(self, case: MorningCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Take the three differences, reading less setting, with their signs.",
            "Which of them is beyond its limit? Are width and height off alike?",
        )


def _offered(fault: str) -> tuple[str, ...]:
    return {
        _OKAY: (_OKAY, _AXIS, _SIZE),
        _AXIS: (_AXIS, _ONWARDS, _OKAY, _SIZE),
        _SIZE: (_SIZE, _ONWARDS, _OKAY, _AXIS, _SHAPE),
        _SHAPE: (_SHAPE, _OKAY, _SIZE),
    }[fault]


def _words(case: MorningCase, key: str) -> str:
    """An option with this lens's figures; what is not off is set back by what it shows."""
    lens = case.lens
    if key == _OKAY:
        return "nothing: the readings go into the log"
    if key == _SHAPE:
        return "cut nothing more on it, and have tracer, chuck and head looked at"
    setting = case.fault if key == _ONWARDS else key
    way = 1.0 if key == _ONWARDS else -1.0
    if setting == _AXIS:
        turn = way * (lens.axis_off_deg or 1.0)
        return f"turn the axis setting {abs(turn):g} degrees {'anticlockwise' if turn > 0.0 else 'clockwise'}"
    change = way * (lens.size_off_mm or 0.1)
    return f"set the size {abs(change):g} mm {'larger' if change > 0.0 else 'smaller'}"


def _lens(draws: Draws, fault: str) -> MorningLens:
    axis = draws.one_of((90.0, 45.0, 135.0, 180.0))
    a, b = 50.0, 36.0
    off = draws.step(-3.0, 3.0, 0.5) if fault == _AXIS else draws.step(-1.0, 1.0, 0.5)
    wide = draws.step(-0.4, 0.4, 0.05) if fault in (_SIZE, _SHAPE) else draws.step(-0.1, 0.1, 0.05)
    high = draws.step(-0.4, 0.4, 0.05) if fault == _SHAPE else wide
    read = (axis + off) % 180.0 or 180.0
    return MorningLens(
        axis_set_deg=axis,
        axis_read_deg=read,
        width_set_mm=a,
        width_read_mm=round(a + wide, 2),
        height_set_mm=b,
        height_read_mm=round(b + high, 2),
    )


def _has(lens: MorningLens, fault: str) -> bool:
    """Off in this alone; a wrong shape is off in size too, and a good lens is not quite as it was set."""
    if fault == _SHAPE:
        return lens.adjust == (_SHAPE,) and abs(lens.size_off_mm) > 0.0
    if fault == _OKAY:
        return lens.adjust == () and lens.axis_off_deg != 0.0 and lens.size_off_mm != 0.0
    return lens.adjust == (fault,)


def _signed(value: float, unit: str, digits: int) -> str:
    return f"{value:+.{digits}f} {unit}" if value else f"0 {unit}"
