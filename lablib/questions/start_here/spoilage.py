"""What a spoiled lens costs, as a question."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.spoilage import MINUTES_PER_HOUR, SpoiledLens
from lablib.bench.spoilage_workings import paid_terms, spoilage_workings
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_LABOUR_STEP = "what the labour costs"
_LENS_ONLY = Slip(
    name="price-of-the-lens-only",
    step="what is paid again beside the lens",
    words="You gave the price of the lens alone. The work is done and paid a second time, and so is the "
    "delivery.",
)
_NO_LABOUR = Slip(
    name="labour-left-out",
    step=_LABOUR_STEP,
    words="You left the labour out. The second lens is laid out, blocked and cut as the first was, and that "
    "time is paid as well.",
)
_AS_HOURS = Slip(
    name="minutes-as-hours",
    step=_LABOUR_STEP,
    words="You multiplied the rate of an hour by the minutes. Divide the minutes by 60 first: the rate is "
    "for a whole hour.",
)
_AS_HUNDREDTHS = Slip(
    name="minutes-as-hundredths",
    step=_LABOUR_STEP,
    words="You took the minutes for hundredths of an hour. An hour has 60 minutes, so a quarter of an hour "
    "is 15 of them, not 25.",
)
_WHOLE_HOUR = Slip(
    name="whole-hour-charged",
    step=_LABOUR_STEP,
    words="You added the rate of a whole hour. Only the minutes of work count, as a part of the hour.",
)
_NO_DELIVERY = Slip(
    name="second-delivery-left-out",
    step="what comes with the second lens",
    words="You left the second delivery out. The new lens is sent like the first, and that is paid again.",
)
_NO_COAT = Slip(
    name="second-coat-left-out",
    step="what the second lens is made with",
    words="You left the coat out. The new lens needs its own, and here it is charged apart.",
)
_TWO_LENSES = Slip(
    name="both-lenses-counted",
    step="how many lenses are lost",
    words="You counted two lenses. Two are bought, but one of them goes to the wearer: one is lost.",
)
_NAMES = ("turned on its block", "was scratched in the edger", "came out too small for its rim")


@dataclass(frozen=True, slots=True, kw_only=True)
class SpoilageCase:
    """A spoiled lens.

    happened: what happened to it, in words; spoiled: what is paid again.
    """

    happened: str
    spoiled: SpoiledLens


class SpoilageCost(Maker[SpoilageCase]):
    """Say what a spoiled lens costs: more than its price."""

    name = "spoilage-cost"
    lesson = "01"
    skill = "cost-of-a-spoiled-lens"
    slips = (
        _LENS_ONLY,
        _NO_LABOUR,
        _AS_HOURS,
        _AS_HUNDREDTHS,
        _WHOLE_HOUR,
        _NO_DELIVERY,
        _NO_COAT,
        _TWO_LENSES,
    )

    def draw(self, draws: Draws) -> SpoilageCase:
        """Return a lens with its second delivery, in every second case with a coat charged apart."""
        return SpoilageCase(
            happened=draws.one_of(_NAMES),
            spoiled=SpoiledLens(
                lens_price=draws.step(28.0, 120.0, 2.0),
                labour_min=draws.step(15.0, 45.0, 5.0),
                hourly_rate=draws.step(24.0, 54.0, 6.0),
                delivery=draws.step(4.0, 9.5, 0.5),
                coat=draws.one_of((0.0, draws.step(12.0, 30.0, 1.0))),
            ),
        )

    def kind(self, case: SpoilageCase) -> AnswerKind:
        """Return a sum of money to a twentieth."""
        return NumberAnswer(unit="", tolerance=0.05, digits=2)

    def answer(self, case: SpoilageCase, slips: Set[str] = NONE) -> object:
        """Return what is paid again, or what is thought to be."""
        again = case.spoiled
        changed = {
            _LENS_ONLY.name: {"labour_min": 0.0, "delivery": 0.0, "coat": 0.0},
            _NO_LABOUR.name: {"labour_min": 0.0},
            _AS_HOURS.name: {"labour_min": again.labour_min * MINUTES_PER_HOUR},
            _AS_HUNDREDTHS.name: {"labour_min": again.labour_min * MINUTES_PER_HOUR / 100.0},
            _WHOLE_HOUR.name: {"labour_min": MINUTES_PER_HOUR},
            _NO_DELIVERY.name: {"delivery": 0.0},
            _NO_COAT.name: {"coat": 0.0},
            _TWO_LENSES.name: {"lens_price": 2.0 * again.lens_price},
        }
        # The price of the lens alone leaves nothing for the others to change, so it comes last.
        for slip in sorted(slips, key=lambda name: name == _LENS_ONLY.name):
            again = replace(again, **changed[slip])
        return again.cost

    def slips_in(self, case: SpoilageCase) -> tuple[Slip, ...]:
        """Return all slips, without the coat's where no coat is charged."""
        return tuple(slip for slip in self.slips if slip is not _NO_COAT or case.spoiled.coat)

    def prompt(self, case: SpoilageCase) -> tuple[str, ...]:
        """Return what happened and what is asked."""
        coat = " It gets its own coat." if case.spoiled.coat else ""
        return (
            f"In the lens room in Harbour Street a lens {case.happened}: it is spoiled. A new lens is bought "
            f"and delivered.{coat} All the work on it is done again. The prices are invented.",
            "What does the spoiled lens cost the lens room altogether? The wearer's wait is not counted. "
            "Write the sum without a currency, to 0.10.",
        )

    def given(self, case: SpoilageCase) -> tuple[Term, ...]:
        """Return prices, minutes and rate."""
        return paid_terms(case.spoiled)

    def solution(self, case: SpoilageCase) -> Solution:
        """Return the labour and the sum."""
        return Solution(
            words=(
                "A spoiled lens costs everything that is paid a second time: the lens, what comes with it, "
                "and the work. One lens is lost, because the other goes to the wearer.",
                "The rate is for an hour, so the minutes count as a part of 60.",
            ),
            workings=spoilage_workings(case.spoiled),
        )

    def hints(self, case: SpoilageCase) -> tuple[str, ...]:
        """Return what to look for."""
        return (
            "Go through the list and ask of each line: is it paid a second time?",
            "The rate is for 60 minutes of work. What part of that was needed?",
        )
