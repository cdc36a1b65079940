"""Which of the things found on the bench did most to turn a lens, as a question with its picture."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from lablib.bench.gains import gain
from lablib.bench.machine import Bench
from lablib.job.spoiled import changes, does_something, spoiled, spoiled_job, spoiled_names
from lablib.questions.slip.picking import PickMaker
from lablib.questions.slip.pictured import drawing_of, setup_sentences
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import plain

# What is blamed, by the change that would put it right.
_BLAMED: Mapping[str, str] = MappingProxyType(
    {
        "clean-lens": "What lay on the lens.",
        "dressed-wheel": "The state of the wheel.",
        "fresh-pad": "The age of the pad.",
        "round-block": "The small face of the block.",
        "film": "The missing film.",
    }
)
# The greatest gain is clear by so much.
_CLEAR = 1.15
_STEP = "which of the findings takes most from the margin"


@dataclass(frozen=True, slots=True, kw_only=True)
class CauseCase:
    """A practice lens that turned.

    name: of `spoiled_names`; keys: what may be blamed, in the order shown.
    """

    name: str
    keys: tuple[str, ...]


class WhichCause(PickMaker[CauseCase]):
    """Find what did most to turn a lens, among what was found on the bench."""

    name = "which-cause"
    lesson = "12"
    skill = "cause-of-a-slip"
    by_option = MappingProxyType(
        {
            "clean-lens": Slip(
                name="skin-blamed",
                step=_STEP,
                words="You blamed what lay on the lens. Read whether it was wiped; if it was not, weigh what "
                "that takes against the rest.",
            ),
            "dressed-wheel": Slip(
                name="wheel-blamed",
                step=_STEP,
                words="You blamed the wheel. Read in which state it was; if it was not sharp, weigh how much "
                "more force that asks against the rest.",
            ),
            "fresh-pad": Slip(
                name="pad-blamed",
                step=_STEP,
                words="You blamed the pad. Read how old it was: a pad loses a little each month, and a new "
                "one nothing.",
            ),
            "round-block": Slip(
                name="block-blamed",
                step=_STEP,
                words="You blamed the block. Read which it was: the round one holds by all its face, and the "
                "half-eye by about six tenths of that.",
            ),
            "film": Slip(
                name="missing-film-blamed",
                step=_STEP,
                words="You blamed the missing film. A film helps a slick coat most, and an ordinary coat "
                "hardly; weigh that against the rest.",
            ),
        }
    )
    slips = tuple(by_option.values())

    def draw(self, draws: Draws) -> CauseCase:
        """Return a lens that turned, with a cause that is clear, and four to choose from."""
        name = draws.until("a lens with a clear cause", lambda one: one.one_of(spoiled_names()), is_clear)
        right = gains(name)[0][0]
        others = draws.some([key for key in _BLAMED if key != right], 3)
        return CauseCase(name=name, keys=draws.shuffled((right, *others)))

    def options(self, case: CauseCase) -> tuple[Option, ...]:
        """Return what may be blamed."""
        return tuple(Option(key=key, words=_BLAMED[key]) for key in case.keys)

    def right(self, case: CauseCase) -> str:
        """Return what raises the margin most when it is put right."""
        return gains(case.name)[0][0]

    def prompt(self, case: CauseCase) -> tuple[str, ...]:
        """Return what was found, and what is asked."""
        return (
            "An invented lens turned on its block in the simulation; the picture shows it before the block "
            "came off. This was found on the bench:",
            *setup_sentences(spoiled(case.name)),
            "Which of these did most to turn it?",
        )

    def solution(self, case: CauseCase) -> Solution:
        """Return the margin with each thing put right."""
        before, wrong = plain(spoiled(case.name).cut.margin, 2), "; ".join(spoiled_job(case.name).wrong)
        told = (
            f"With {changes()[key].words}: {plain(spoiled(case.name, key).cut.margin, 2)}."
            for key, _ in gains(case.name)
        )
        return Solution(
            words=(
                f"As it was cut, the margin was {before}. One thing put right at a time:",
                *told,
                f"The most is gained where the most was lost. {_BLAMED[self.right(case)]} What was in order "
                "cannot be put right, so it is not in the list.",
                f"So the log says of it: {wrong}.",
            )
        )

    def hints(self, case: CauseCase) -> tuple[str, ...]:
        """Return where to look."""
        return (
            "Cross out first what was in order.",
            "Of what is left, what does each multiply the margin by? Oil leaves about half of what holds; "
            f"against a sharp wheel a used one asks {_force('used')} times the force, a loaded one "
            f"{_force('loaded')} times, a glazed one {_force('glazed')} times.",
        )

    def drawing(self, case: CauseCase) -> Drawing:
        """Return the lens as it stood on its block."""
        return drawing_of(case.name)


def _force(wheel: str) -> str:
    return plain(Bench().wheels[wheel], 1)


@cache
def gains(name: str) -> tuple[tuple[str, float], ...]:
    """Return what each thing put right multiplies the margin by, the most first, without what was in order.

    name: of a practice lens.
    """
    before = spoiled(name).cut.margin
    found = {
        key: gain(margin=before, changed=spoiled(name, key).cut.margin)
        for key in _BLAMED
        if does_something(name, key)
    }
    return tuple(sorted(found.items(), key=lambda one: -round(one[1], 6)))


@cache
def is_clear(name: str) -> bool:
    """Return whether a practice lens turns, and one thing put right would have helped clearly most.

    name: of `spoiled_names`.
    """
    if spoiled(name).cut.margin >= 1.0 or not gains(name):
        return False
    first, *rest = (value for _, value in gains(name))
    return first >= _CLEAR * max(rest, default=1.0)
