"""Which joint of a stack gives way first, as a question: the stack in words, no numbers."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.setup import Setup
from lablib.questions.bench_stack.words import NEWTON_METRES, NMM_PER_NM, held, lens_words, pad_words
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import plain

_STEP = "which joint of the chain holds least"
_TIP = Slip(
    name="back-tip-as-a-link",
    step=_STEP,
    words="You named the back tip. It is no link of the chain: it holds beside it, and is added.",
)
_BLOCK = Slip(
    name="joint-at-the-block-blamed",
    step=_STEP,
    words="You named the pad on the block. Only dirt there makes it the weakest, and even that not above a "
    "bare slick coat.",
)
_CORE = Slip(
    name="core-blamed",
    step=_STEP,
    words="You named the pad's core. It gives first only where every face beside it holds better, and here "
    "one holds less.",
)
_LENS = Slip(
    name="joint-at-the-lens-blamed",
    step=_STEP,
    words="You named the pad on the lens. Nothing slick or greasy enough lies there to make it the weakest.",
)
_BARE = Slip(
    name="joint-under-a-film",
    step=_STEP,
    words="You named the pad on the coat. A film lies between them: that joint is gone, and two others have "
    "taken its place.",
)
_FILM = Slip(
    name="film-blamed",
    step=_STEP,
    words="You named the film on the coat. On a clean coat, without a crease, it holds more than the pad's "
    "own core.",
)
# The next weakest holds at least so many times as much.
_CLEAR = 1.1
_BACK = "back tip"
_WORDS = {
    "block to pad": "The pad on the block",
    "pad core": "The pad's own core",
    "pad to lens": "The pad on the lens",
    "pad to coat": "The pad on the coat",
    "film to coat": "The film on the coat",
    _BACK: "The back tip",
}
_SLIPS = {
    "block to pad": _BLOCK,
    "pad core": _CORE,
    "pad to lens": _LENS,
    "pad to coat": _LENS,
    "film to coat": _FILM,
    _BACK: _TIP,
}
_LENSES = (
    Setup(coat="uncoated"),
    Setup(coat="coated"),
    Setup(coat="slick"),
    Setup(coat="slick", grip_layer="present"),
    Setup(coat="slick", film=True),
)
_BLOCKS = {"clean": "a clean block", "worn": "a worn block", "dirty": "a dirty block"}


@dataclass(frozen=True, slots=True, kw_only=True)
class WeakestCase:
    """A stack.

    setup: what it is; shown: keys of the options.
    """

    setup: Setup
    shown: tuple[str, ...] = ()

    @property
    def slips(self) -> dict[str, Slip]:
        """What leads to each option but the right one."""
        under_film = {"pad to coat": _BARE} if self.setup.film else {}
        known = _SLIPS | under_film
        return {key: known[key] for key in self.shown if key != self.weakest}

    @property
    def weakest(self) -> str:
        """The joint that gives way first."""
        return held(self.setup).weakest.name


class WeakestJoint(Maker[WeakestCase]):
    """Name the joint that gives way first."""

    name = "weakest-joint"
    lesson = "10"
    skill = "weakest-joint-of-a-stack"
    slips = (_TIP, _BLOCK, _CORE, _LENS, _BARE, _FILM)

    def draw(self, draws: Draws) -> WeakestCase:
        """Return a stack whose weakest joint is clear."""
        setup = draws.until("a stack", _drawn, _is_clear)
        joints = ("block to pad", "pad core", held(setup).joints[-1].name, _BACK)
        trap = ("pad to coat",) if setup.film else ()
        return WeakestCase(setup=setup, shown=draws.shuffled((*joints, *trap)))

    def kind(self, case: WeakestCase) -> ChoiceAnswer:
        """Return the joints in words."""
        return ChoiceAnswer(options=tuple(Option(key=key, words=_WORDS[key]) for key in case.shown))

    def answer(self, case: WeakestCase, slips: Set[str] = NONE) -> str:
        """Return the weakest joint, or the one a slip leads to."""
        return next((key for key, slip in case.slips.items() if slip.name in slips), case.weakest)

    def slips_in(self, case: WeakestCase) -> tuple[Slip, ...]:
        """Return the slips of the options that are offered."""
        return tuple(case.slips.values())

    def pairs(self, case: WeakestCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: WeakestCase) -> tuple[str, ...]:
        """Return the stack in words, and what is asked."""
        setup = case.setup
        layer = ", its maker's grip layer still there" if setup.grip_layer == "present" else ""
        film = ", a film without a crease" if setup.film else ""
        return (
            f"An invented stack, from the lens to the block: {lens_words(setup)}{layer}{film}, a "
            f"{pad_words(setup)}, {_BLOCKS[setup.block_face]}. The room is at 23 degrees.",
            "Which joint gives way first?",
        )

    def solution(self, case: WeakestCase) -> Solution:
        """Return what each joint holds, and which governs."""
        hold = held(case.setup)
        torques = ", ".join(f"{joint.name} {_nm(joint.torque_nmm)}" for joint in hold.joints)
        return Solution(
            words=(
                f"By the workbook's teaching estimates the joints hold, in {NEWTON_METRES}: {torques}. The "
                f"least governs: {case.weakest}.",
                f"The back tip adds its {_nm(hold.back_nmm)} {NEWTON_METRES} beside the chain.",
                "At the bench whatever weakens a joint is mended first: no lens is blocked with anything on "
                "it, nor on a worn or dirty block.",
            )
        )

    def hints(self, case: WeakestCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Name the joints from the block to the lens. Is any of their faces slick, dirty or greasy?",
            "Where every face is sound, what is left that can give way?",
        )


def _drawn(draws: Draws) -> Setup:
    trouble = draws.one_of(
        (
            {},
            {"skin": "fingerprint"},
            {"skin": "oily"},
            {"pad_age_months": draws.step(3.0, 9.0, 1.0)},
            {"block_face": "worn"},
            {"block_face": "dirty"},
        )
    )
    return replace(draws.one_of(_LENSES), **trouble)


def _is_clear(setup: Setup) -> bool:
    least, second, *_ = sorted(joint.torque_nmm for joint in held(setup).joints)
    return round(second / least, 3) >= _CLEAR


def _nm(torque_nmm: float) -> str:
    return plain(torque_nmm / NMM_PER_NM, 2)
