"""Which trial can show something, as a question: lenses counted, or torque read."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from lablib.bench.trials import lenses_each_way, readings_each_way
from lablib.questions.slip.picking import PickMaker
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Slip, Solution

_STEP = "how many each way needs"
_BY_OPTION: Mapping[str, Slip] = MappingProxyType(
    {
        "count": Slip(
            name="too-few-counted",
            step=_STEP,
            words="You counted too few lenses. The number is needed for each way, and only half of the "
            "lenses go each way.",
        ),
        "measure": Slip(
            name="too-few-readings",
            step=_STEP,
            words="You took too few readings. The number is needed for each way, and only half of the "
            "readings go each way.",
        ),
        "few": Slip(
            name="none-read-as-never",
            step="what none in so many says",
            words="You read none in twenty as never. One lens in eight could turn, and still twenty would "
            "now and then all hold.",
        ),
        "drive": Slip(
            name="driven-to-slip",
            step="what is never done on the machine",
            words="You drove lenses to slip in the edger. They break, and that is never done. Torque is "
            "measured on scrap, in a guarded hand jig.",
        ),
    }
)
# Shares before and after; changes of the mean torque and scatter of a reading, as shares of the mean.
_SHARES = ((0.05, 0.01), (0.06, 0.02), (0.08, 0.03), (0.10, 0.04))
_READINGS = ((0.25, 0.20), (0.30, 0.20), (0.25, 0.25), (0.20, 0.20))


@cache
def _lenses(before: float, after: float) -> int:
    return lenses_each_way(before, after)


@cache
def _torques(change: float, scatter: float) -> int:
    return readings_each_way(change, scatter)


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialCase:
    """Two ways to hold lenses, and two trials of them.

    shares: spoiled before and hoped for after; reading: change of the mean torque and scatter, as shares.
    lenses, torques: in all, half of them each way; keys: of the options in the order shown.
    """

    shares: tuple[float, float]
    reading: tuple[float, float]
    lenses: int
    torques: int
    keys: tuple[str, ...]

    @property
    def needs(self) -> tuple[int, int]:
        """Lenses and readings that each way needs."""
        return _lenses(*self.shares), _torques(*self.reading)


class TrialThatShows(PickMaker[TrialCase]):
    """Choose the trial that can show whether a new pad holds better."""

    name = "trial-that-shows"
    lesson = "15"
    skill = "size-of-a-trial"
    by_option = _BY_OPTION
    slips = tuple(_BY_OPTION.values())

    def draw(self, draws: Draws) -> TrialCase:
        """Return two trials of which one is large enough, and the other only seems so."""
        shares, reading = draws.one_of(_SHARES), draws.one_of(_READINGS)
        enough, short = draws.step(2.1, 2.6, 0.1), draws.step(1.1, 1.7, 0.1)
        counts = draws.one_of((True, False))
        return TrialCase(
            shares=shares,
            reading=reading,
            lenses=_even(_lenses(*shares) * (enough if counts else short)),
            torques=_even(_torques(*reading) * (short if counts else enough)),
            keys=draws.shuffled(tuple(_BY_OPTION)),
        )

    def options(self, case: TrialCase) -> tuple[Option, ...]:
        """Return the trials."""
        words = {
            "count": f"Cut {case.lenses} ordinary lenses, half of them on each pad, and count those that "
            "turn.",
            "measure": f"Take {case.torques} break-loose torques of scrap lenses in a guarded hand jig, half "
            "of them on each pad.",
            "few": "Cut twenty lenses on the new pad. If none turns, it holds.",
            "drive": "Set the edger so hard that lenses turn, and see which pad lets go first.",
        }
        return tuple(Option(key=key, words=words[key]) for key in case.keys)

    def right(self, case: TrialCase) -> str:
        """Return the trial that is large enough."""
        return "count" if case.lenses >= 2 * case.needs[0] else "measure"

    def prompt(self, case: TrialCase) -> tuple[str, ...]:
        """Return what each way needs, and what is asked."""
        (before, after), (change, scatter) = case.shares, case.reading
        lenses, torques = case.needs
        return (
            "An invented lens room wants to know whether a new pad holds better than the old one. To show a "
            f"fall of the lenses that turn from {100 * before:.0f} % to {100 * after:.0f} % takes {lenses} "
            f"lenses on each pad. To show a change of {100 * change:.0f} % in the mean torque, with readings "
            f"that scatter by {100 * scatter:.0f} %, takes {torques} readings on each pad. Both in four "
            "trials of five.",
            "Which of these trials can show it?",
        )

    def solution(self, case: TrialCase) -> Solution:
        """Return both trials against what they need."""
        lenses, torques = case.needs
        return Solution(
            words=(
                f"Counting needs {lenses} on each pad, {2 * lenses} in all, and has {case.lenses}. Measuring "
                f"needs {torques} on each, {2 * torques} in all, and has {case.torques}.",
                "A lens that turned or not says little; a torque says much. So where it can be had, measure "
                "torque, on thick scrap in a guarded hand jig, never in the edger.",
            )
        )

    def hints(self, case: TrialCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "First put aside what is never done, and what proves nothing.",
            "Half of the lenses or readings go each way. Is that enough?",
        )


def _even(value: float) -> int:
    """The even number next to a value."""
    return 2 * round(value / 2.0)
