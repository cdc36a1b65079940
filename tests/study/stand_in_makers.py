"""Makers of plain arithmetic that stand in for those of the trade, one of each kind of answer."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.marker import MarkerAnswer
from lablib.study.number import NumberAnswer
from lablib.study.picked import ChoiceAnswer, Earlier, Option, OrderAnswer, SeveralAnswer, WrongPick
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

LETTERS = tuple(Option(key=key, words=f"letter {key.upper()}") for key in "abcd")


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A board that is sawn into shares: its length, and what the saw takes [mm]."""

    length_mm: float
    loss_mm: float


class Shares(Maker[Board]):
    """Half of a board after the saw; two slips in one step, one in another."""

    name = "shares"
    lesson = "01"
    skill = "sharing-a-board"
    slips = (
        Slip(name="not-halved", step="halving the rest", words="You gave both shares together."),
        Slip(name="in-three", step="halving the rest", words="You shared among three."),
        Slip(name="loss-added", step="taking off the loss", words="You added what the saw takes."),
    )

    def draw(self, draws: Draws) -> Board:
        return Board(length_mm=draws.step(400.0, 900.0, 10.0), loss_mm=draws.step(2.0, 12.0, 0.5))

    def kind(self, case: Board) -> NumberAnswer:
        return NumberAnswer(unit="mm", tolerance=0.5, digits=1)

    def answer(self, case: Board, slips: Set[str] = NONE) -> float:
        loss_mm = -case.loss_mm if "loss-added" in slips else case.loss_mm
        rest_mm = case.length_mm - loss_mm
        share_mm = rest_mm / (3.0 if "in-three" in slips else 2.0)
        return 2.0 * share_mm if "not-halved" in slips else share_mm

    def prompt(self, case: Board) -> tuple[str, ...]:
        return ("A board is sawn in two.", "How long is one share, to 0.5 mm?")

    def given(self, case: Board) -> tuple[Term, ...]:
        return (
            Term(symbol="L", value=case.length_mm, unit="mm", digits=0, meaning="length of the board"),
            Term(symbol="t", value=case.loss_mm, unit="mm", digits=1, meaning="what the saw takes"),
        )

    def solution(self, case: Board) -> Solution:
        working = Working(
            what="one share",
            symbol="s",
            formula="(L - t) / 2",
            terms=self.given(case),
            value=self.answer(case),
            unit="mm",
        )
        return Solution(words=("The saw takes its part first.",), workings=(working,))

    def hints(self, case: Board) -> tuple[str, ...]:
        return ("What is left after the saw?", "Take off the loss first.", "Then share the rest between two.")


class Drift(Maker[float]):
    """A number that needs its sign; one slip turns the sign, another doubles it."""

    name = "drift"
    lesson = "01"
    skill = "signing-a-drift"
    slips = (
        Slip(name="sign-turned", step="the sign", words="You turned the sign."),
        Slip(name="doubled", step="the size", words="You doubled it."),
        Slip(name="doubled-and-turned", step="the size", words="You doubled it on the other side."),
    )

    def draw(self, draws: Draws) -> float:
        return draws.step(-8.0, 8.0, 0.25)

    def kind(self, case: float) -> NumberAnswer:
        return NumberAnswer(unit="D", tolerance=0.12, digits=2, signed=True)

    def answer(self, case: float, slips: Set[str] = NONE) -> float:
        size = case * (2.0 if "doubled" in slips else -2.0 if "doubled-and-turned" in slips else 1.0)
        return -size if "sign-turned" in slips else size

    def prompt(self, case: float) -> tuple[str, ...]:
        return (f"The needle stands at {case:+.2f} D.", "What is the drift?")

    def solution(self, case: float) -> Solution:
        return Solution(words=("Read it off.",))

    def hints(self, case: float) -> tuple[str, ...]:
        return ("Look at the needle.",)


class Blurred(Drift):
    """A maker none of whose cases can be told from its own mistakes."""

    name = "blurred"

    def answer(self, case: float, slips: Set[str] = NONE) -> float:
        return case


class _Letters(Maker[tuple[str, ...]]):
    """What the makers with letters share; the case is an order of them."""

    lesson = "01"
    skill = "reading-letters"

    def draw(self, draws: Draws) -> tuple[str, ...]:
        return draws.shuffled("abcd")

    def prompt(self, case: tuple[str, ...]) -> tuple[str, ...]:
        return (f"The card says {' '.join(case)}.", "What does it ask for?")

    def solution(self, case: tuple[str, ...]) -> Solution:
        return Solution(words=("It is printed on the card.",))

    def hints(self, case: tuple[str, ...]) -> tuple[str, ...]:
        return ("Read the card.", "Read it from the left.")

    def pairs(self, case: tuple[str, ...], kind: AnswerKind, known: tuple[object, ...]) -> tuple:
        return ()


class FirstLetter(_Letters):
    """A choice."""

    name = "first-letter"
    slips = (
        Slip(name="second", step="where to begin", words="You took the second."),
        Slip(name="third", step="where to begin", words="You took the third."),
        Slip(name="last", step="where to begin", words="You took the last."),
    )

    def kind(self, case: tuple[str, ...]) -> ChoiceAnswer:
        return ChoiceAnswer(options=LETTERS)

    def answer(self, case: tuple[str, ...], slips: Set[str] = NONE) -> str:
        places = {"second": 1, "third": 2, "last": 3}
        return case[max((places[slip] for slip in slips), default=0)]


class LettersInOrder(_Letters):
    """An order."""

    name = "letters-in-order"
    slips = (
        Slip(name="start-late", step="the first two", words="You began with the second."),
        Slip(name="end-early", step="the last two", words="You ended with the third."),
    )

    def kind(self, case: tuple[str, ...]) -> OrderAnswer:
        return OrderAnswer(options=LETTERS)

    def answer(self, case: tuple[str, ...], slips: Set[str] = NONE) -> tuple[str, ...] | Earlier:
        if "start-late" in slips:
            return Earlier(first=case[1], second=case[0])
        if "end-early" in slips:
            return Earlier(first=case[3], second=case[2])
        return case


class OuterLetters(_Letters):
    """Several picks."""

    name = "outer-letters"
    slips = (
        Slip(name="inner-picked", step="what is outer", words="You picked an inner one."),
        Slip(name="last-left-out", step="both ends", words="You left the last one out."),
    )

    def kind(self, case: tuple[str, ...]) -> SeveralAnswer:
        return SeveralAnswer(options=LETTERS)

    def answer(self, case: tuple[str, ...], slips: Set[str] = NONE) -> frozenset[str] | WrongPick:
        if "inner-picked" in slips:
            return WrongPick(key=case[1], picked=True)
        if "last-left-out" in slips:
            return WrongPick(key=case[3], picked=False)
        return frozenset({case[0], case[3]})


class Needle(Maker[float]):
    """A place on a scale that wraps."""

    name = "needle"
    lesson = "01"
    skill = "turning-round"
    slips = (Slip(name="not-turned", step="turning round", words="You left it where it was."),)

    def draw(self, draws: Draws) -> float:
        return draws.step(0.0, 355.0, 5.0)

    def kind(self, case: float) -> MarkerAnswer:
        return MarkerAnswer(
            label="place", unit="degrees", low=0.0, high=360.0, step=1.0, start=0.0, tolerance=4.0, wraps=True
        )

    def answer(self, case: float, slips: Set[str] = NONE) -> float:
        return case if slips else (case + 180.0) % 360.0

    def prompt(self, case: float) -> tuple[str, ...]:
        return (f"The needle points to {case:.0f} degrees.", "Where does its other end point?")

    def solution(self, case: float) -> Solution:
        return Solution(words=("Half a turn on.",))

    def hints(self, case: float) -> tuple[str, ...]:
        return ("Follow the needle through its pivot.",)

    def drawing(self, case: float) -> Drawing:
        return Drawing(name="needle", values={"at_deg": case})


EVERY_KIND = (Shares(), Drift(), FirstLetter(), LettersInOrder(), OuterLetters(), Needle())
