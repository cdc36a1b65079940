"""The chance of slip that belongs to a margin, as a question."""

import math
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from lablib.bench.machine import Bench
from lablib.bench.margin import log_scatter, slip_probability
from lablib.questions.slip.picking import PickMaker
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working, plain

_RIGHT, _SAFE, _LACK, _OVER, _OTHER = "right", "safe", "lack", "over", "other"
_READ = "what a margin above 1 promises"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChanceCase:
    """A margin, and whether the bench has been calibrated.

    margin: S; is_calibrated; keys: of the options, in the order shown.
    """

    margin: float
    is_calibrated: bool
    keys: tuple[str, ...]

    def chances(self) -> dict[str, int]:
        """Return what each option says, in whole per cent."""
        shares = {
            _RIGHT: chance_of(self.margin, self.is_calibrated),
            _SAFE: 0.0,
            _LACK: 1.0 - 1.0 / self.margin,
            _OVER: self.margin - 1.0,
            _OTHER: chance_of(self.margin, not self.is_calibrated),
        }
        return {key: round(100.0 * share) for key, share in shares.items()}


@cache
def chance_of(margin: float, is_calibrated: bool) -> float:
    """Return the probability that a lens of a margin turns, on the default bench.

    margin: S; is_calibrated: whether the bench has been.
    """
    return slip_probability(margin, log_scatter(Bench(), calibrated=is_calibrated))


class ChanceOfSlip(PickMaker[ChanceCase]):
    """Tell which chance of slip belongs to a margin."""

    name = "chance-of-slip"
    lesson = "12"
    skill = "margin-to-chance"
    by_option = MappingProxyType(
        {
            _SAFE: Slip(
                name="above-1-read-as-safe",
                step=_READ,
                words="You read a margin above 1 as safe. It is an estimate of two torques that scatter "
                "from lens to lens: at exactly 1 half the lenses turn, and above it some still do.",
            ),
            _LACK: Slip(
                name="lack-read-as-chance",
                step=_READ,
                words="You took the part that the load lacks to the hold, and read that as a chance. A "
                "margin is a ratio: what chance belongs to it depends on how much both scatter.",
            ),
            _OVER: Slip(
                name="excess-read-as-chance",
                step=_READ,
                words="You took what lies above 1 and read it as a chance. Then a greater margin would mean "
                "a greater chance.",
            ),
            _OTHER: Slip(
                name="calibration-mixed-up",
                step="whether the bench has been calibrated",
                words="You gave the chance for the other state of the bench. Before calibration the doubt "
                "about its numbers comes on top, so that a margin above 1 promises less.",
            ),
        }
    )
    slips = tuple(by_option.values())

    def draw(self, draws: Draws) -> ChanceCase:
        """Return a margin a little above 1, at which every option says something else."""
        return draws.until("a margin and its chances", _draw_chance, _are_apart)

    def options(self, case: ChanceCase) -> tuple[Option, ...]:
        """Return the chances."""
        chances = case.chances()
        return tuple(Option(key=key, words=f"About {chances[key]} lenses in 100 turn.") for key in case.keys)

    def right(self, case: ChanceCase) -> str:
        """Return the key of the chance by the model."""
        return _RIGHT

    def prompt(self, case: ChanceCase) -> tuple[str, ...]:
        """Return the margin, what the lesson's table says, and what is asked."""
        state = "has been calibrated" if case.is_calibrated else "has not been calibrated yet"
        return (
            "How many of 100 lenses turn on their blocks, by the workbook's estimate? At a margin of 1.0 it "
            "is 50, whether or not the bench has been calibrated. Before calibration it is "
            f"{_percent(1.5, False)} at 1.5 and {_percent(2.3, False)} at 2.3; afterwards "
            f"{_percent(1.5, True)} at 1.5 and {_percent(2.1, True)} at 2.1.",
            f"A job has a margin of {plain(case.margin, 2)}, on a bench that {state}. Roughly how many of "
            "100 such lenses would turn on their blocks?",
        )

    def solution(self, case: ChanceCase) -> Solution:
        """Return why it lies between two values of the table."""
        right, other = (case.chances()[key] for key in (_RIGHT, _OTHER))
        return Solution(
            words=(
                f"It lies between the figures at 1.0 and at 1.5: about {right} in 100. In the other "
                f"state of the bench it would be about {other}.",
                "A margin of 1 means that hold and load are equal by the estimate; then it is even chances. "
                "Only well above 1 is a lens safe, and the less is known of the bench, the farther above.",
            ),
            workings=_chance_workings(case),
        )

    def hints(self, case: ChanceCase) -> tuple[str, ...]:
        """Return how to bracket it."""
        return (
            "At 1.0 it is an even chance. Does the chance rise or fall from there?",
            "Which row of figures is yours, before calibration or after? Find two values it must lie "
            "between.",
        )


def _percent(margin: float, is_calibrated: bool) -> str:
    return f"{100.0 * chance_of(margin, is_calibrated):.0f}"


def _draw_chance(draws: Draws) -> ChanceCase:
    return ChanceCase(
        margin=draws.step(1.1, 1.45, 0.05),
        is_calibrated=draws.one_of((False, True)),
        keys=draws.shuffled((_RIGHT, _SAFE, _LACK, _OVER, _OTHER)),
    )


def _are_apart(case: ChanceCase) -> bool:
    return len(set(case.chances().values())) == len(case.keys)


def _chance_workings(case: ChanceCase) -> tuple[Working, ...]:
    sigma = log_scatter(Bench(), calibrated=case.is_calibrated)
    log = Term(symbol="L_S", value=math.log(case.margin), digits=4, meaning="natural logarithm of the margin")
    scatter = Term(symbol="sigma", value=sigma, digits=4, meaning="scatter of that logarithm on this bench")
    away = Working(
        what="how many scatters the margin lies above 1",
        symbol="z",
        formula="L_S / sigma",
        terms=(log, scatter),
        value=math.log(case.margin) / sigma,
        digits=3,
    )
    chance = chance_of(case.margin, case.is_calibrated)
    beyond = f"share of a normal distribution beyond z = {away.result}, from its table"
    return away, Working(
        what="chance of slip",
        symbol="p",
        formula="100 * A_z",
        terms=(Term(symbol="A_z", value=chance, digits=4, meaning=beyond),),
        value=100.0 * chance,
        unit="%",
        digits=1,
    )
