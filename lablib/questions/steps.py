"""Steps of the work, mixed up, to be put into their order; each usual exchange has its slip."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Earlier, Option, OrderAnswer
from lablib.study.question import Mistake, Slip


@dataclass(frozen=True, slots=True, kw_only=True)
class Steps:
    """Steps of the work in their order, and what is done too early.

    words: of each step, by its key, in their order.
    exchanges: slips, each with the two steps it exchanges.
    """

    words: dict[str, str]
    exchanges: tuple[tuple[Slip, Earlier], ...]

    @classmethod
    def read(cls, package: str, name: str) -> "Steps":
        """Read steps from a table.

        package, name: of the TOML file, whose tables are `step` and `slip.*` with `early` and `late`.
        """
        table = read_table(package, name)
        exchanges = tuple(
            (
                Slip(name=key, step=row["step"], words=row["words"]),
                Earlier(first=row["early"], second=row["late"]),
            )
            for key, row in table["slip"].items()
        )
        return cls(words=table["step"], exchanges=exchanges)

    @property
    def slips(self) -> tuple[Slip, ...]:
        """The slips alone."""
        return tuple(slip for slip, _ in self.exchanges)

    def in_order(self, keys: Set[str]) -> tuple[str, ...]:
        """Return some of the steps in their order.

        keys: which.
        """
        return tuple(key for key in self.words if key in keys)


@dataclass(frozen=True, slots=True, kw_only=True)
class StepsCase:
    """Some of the steps.

    shown: their keys, in the order shown at first.
    """

    shown: tuple[str, ...]


class StepsMaker(Maker[StepsCase]):
    """Put steps in order; a subclass gives `steps`, those always shown in `core`, and how many `more`."""

    steps: Steps
    core: tuple[str, ...]
    more: int

    def fits(self, more: tuple[str, ...]) -> bool:
        """Return whether further steps leave one order only.

        more: their keys.
        """
        return True

    def draw(self, draws: Draws) -> StepsCase:
        """Return the main steps and some more, never in their order at first."""
        rest = [key for key in self.steps.words if key not in self.core]
        more = draws.until("further steps", lambda draws: draws.some(rest, self.more), self.fits)
        shown = draws.shuffled((*self.core, *more))
        in_order = self.steps.in_order(set(shown))
        return StepsCase(shown=(*shown[1:], shown[0]) if shown == in_order else shown)

    def kind(self, case: StepsCase) -> OrderAnswer:
        """Return the steps as they are shown."""
        return OrderAnswer(options=tuple(Option(key=key, words=self.steps.words[key]) for key in case.shown))

    def answer(self, case: StepsCase, slips: Set[str] = NONE) -> object:
        """Return the order of the bench, or which two steps a slip exchanges."""
        wrong = (exchange for slip, exchange in self.steps.exchanges if slip.name in slips)
        return next(wrong, self.steps.in_order(set(case.shown)))

    def slips_in(self, case: StepsCase) -> tuple[Slip, ...]:
        """Return the slips whose two steps are both shown."""
        shown = set(case.shown)
        return tuple(slip for slip, wrong in self.steps.exchanges if {wrong.first, wrong.second} <= shown)

    def pairs(self, case: StepsCase, kind: OrderAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each exchange is seen by itself."""
        return ()

    def told(self, case: StepsCase) -> str:
        """Return the steps of a case in their order, as one sentence.

        case: of this maker.
        """
        words = (self.steps.words[key] for key in self.answer(case))
        return f"In order: {'; '.join(one[0].lower() + one[1:] for one in words)}."
