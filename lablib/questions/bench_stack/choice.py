"""Which of several stacks holds most on the front, as a question; each wrong one has its attraction."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.parameter import default
from lablib.bench.setup import Setup
from lablib.questions.bench_stack.fresh import fresh_nmm, told_terms
from lablib.questions.bench_stack.words import CAUTION, NMM_PER_NM, held, stack_words
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term, plain

_CHAIN_STEP = "which joint of this stack is the weakest"
_SLICK = Slip(
    name="slick-coat-trusted",
    step=_CHAIN_STEP,
    words="You took the slick coat for the better ground. It is made so that nothing sticks to it: it gives "
    "the pad little to hold.",
)
_FILM = Slip(
    name="film-as-extra-strength",
    step=_CHAIN_STEP,
    words="You took the film for extra strength. It only puts its own joint in the place of the pad's on the "
    "lens, and the oil weakens that one too.",
)
_NEW_PAD = Slip(
    name="new-pad-against-dirt",
    step=_CHAIN_STEP,
    words="You trusted the new pad. Oil on the lens takes more from the joint than all these months take "
    "from a pad.",
)
_OLD_PAD = Slip(
    name="pad-age-ignored",
    step=_CHAIN_STEP,
    words="You took the old pad for as good as the other. The faces of a pad lose grip month by month, and "
    "one past its shelf life is not used at all.",
)
_NO_FILM = Slip(
    name="film-thought-a-weakness",
    step=_CHAIN_STEP,
    words="You took the stack with no film. One joint more does not make a chain weaker: on a slick coat the "
    "film takes the weakest joint out and puts a stronger one in.",
)
_UNDER_FILM = Slip(
    name="dirt-under-film-ignored",
    step=_CHAIN_STEP,
    words="You reckoned that a film makes up for the oil. The film sticks to the lens itself, so its joint "
    "suffers as the pad's would.",
)
_COAT_GRIPS = Slip(
    name="coat-thought-to-grip",
    step=_CHAIN_STEP,
    words="You took the coated lens for the better ground. A coat takes grip away; the pad holds best on a "
    "lens without one.",
)
# What is best is clear by so much.
_CLEAR = 1.20
_FEWEST, _MOST = 2, 3
_DIRT_TAKES = {"clean": "", "fingerprint": "the fingerprint", "oily": "the oil"}
# A pad past its shelf life is not used at all.
_SHELF_MONTHS = default("shelf_life_months")
_KEYS = ("a", "b", "c", "d")
_GROUNDS = (("uncoated", False), ("coated", False), ("coated", False), ("slick", True), ("slick", True))


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferedStack:
    """A stack among others.

    key: by which it is picked; setup: what it is; slip: name of the mistake that leads to it, empty for the
    strongest.
    """

    key: str
    setup: Setup
    slip: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StacksCase:
    """Stacks to choose from.

    stacks: in the order shown.
    """

    stacks: tuple[OfferedStack, ...]


def front_nmm(setup: Setup) -> float:
    """Return what the front of a stack carries [N mm].

    setup: the stack.
    """
    return held(setup).front_nmm


def attractive(best: Setup, *, old_months: float) -> dict[str, Setup]:
    """Return weaker stacks that attract, by the name of the slip that leads to each.

    best: the strongest stack, clean or with a fingerprint; old_months: age of a pad that is old [months].

    A fingerprint takes too little for the choice to be clear; oil takes enough.
    """
    slick, bare = best.coat == "slick", not best.film
    aged = best.pad_age_months > 0.0
    found = {
        _SLICK.name: not slick and replace(best, coat="slick", film=False, skin="clean"),
        _FILM.name: not slick and bare and replace(best, film=True, skin="oily"),
        _NEW_PAD.name: aged and replace(best, pad_age_months=0.0, skin="oily"),
        _OLD_PAD.name: bare and replace(best, pad_age_months=old_months),
        _NO_FILM.name: slick and best.film and replace(best, film=False, skin="clean", pad_age_months=0.0),
        _UNDER_FILM.name: best.film and replace(best, skin="oily"),
        _COAT_GRIPS.name: best.coat == "uncoated" and replace(best, coat="coated"),
    }
    return {
        name: setup
        for name, setup in found.items()
        if setup and round(front_nmm(best) / front_nmm(setup), 3) >= _CLEAR
    }


class StrongestStack(Maker[StacksCase]):
    """Choose the stack whose front holds most."""

    name = "strongest-stack"
    lesson = "01"
    skill = "compare-stacks"
    slips = (_SLICK, _FILM, _NEW_PAD, _OLD_PAD, _NO_FILM, _UNDER_FILM, _COAT_GRIPS)

    def draw(self, draws: Draws) -> StacksCase:
        """Return a strong stack and two or three weaker ones that attract, in any order."""
        best, wrong = draws.until(
            "a stack and weaker ones", _draw_stacks, lambda drawn: len(drawn[1]) >= _FEWEST
        )
        return _case(best, wrong, draws)

    def kind(self, case: StacksCase) -> AnswerKind:
        """Return the stacks in words."""
        return ChoiceAnswer(
            options=tuple(Option(key=one.key, words=stack_words(one.setup)) for one in case.stacks)
        )

    def answer(self, case: StacksCase, slips: Set[str] = NONE) -> object:
        """Return the strongest stack, or the one that a slip leads to."""
        led_to = [one for one in case.stacks if one.slip in slips]
        return max(led_to or case.stacks, key=lambda one: front_nmm(one.setup)).key

    def slips_in(self, case: StacksCase) -> tuple[Slip, ...]:
        """Return the slips that lead to the stacks shown."""
        names = {one.slip for one in case.stacks}
        return tuple(slip for slip in self.slips if slip.name in names)

    def pairs(self, case: StacksCase, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each stack has its own reason."""
        return ()

    def prompt(self, case: StacksCase) -> tuple[str, ...]:
        """Return what the workbook reckons with, the caution where a lens is not clean, and what is asked."""
        is_dirty = any(one.setup.skin != "clean" for one in case.stacks)
        return (
            "These stacks are pressed on alike, on the same block and under the same clamp force. They "
            "differ in coat, film, pad, and in what lies on the lens. The table holds what each joint bears "
            "new and clean, by the workbook's own estimate.",
            *((CAUTION,) if is_dirty else ()),
            "Which of them holds most torque on its front, from block to lens?",
        )

    def given(self, case: StacksCase) -> tuple[Term, ...]:
        """Return every joint that occurs, new and clean, and what age and dirt do to it."""
        return told_terms(one.setup for one in case.stacks)

    def solution(self, case: StacksCase) -> Solution:
        """Return the weakest joint of each stack, the strongest stack first."""
        ordered = sorted(case.stacks, key=lambda one: -front_nmm(one.setup))
        return Solution(
            words=(
                "The front is a chain, so each stack is worth what its weakest joint bears:",
                *(_told(one.setup) for one in ordered),
                "By hand, with the rounded shares of the table, the last figure may differ. The figures are "
                "the workbook's own estimates; what a stack bears on your bench, only a calibration tells.",
            )
        )

    def hints(self, case: StacksCase) -> tuple[str, ...]:
        """Return what to look for in each stack."""
        return (
            "The front is a chain. Look in each stack for its weakest joint only, and compare those.",
            "What lies on the lens weakens the joint that touches it, whether pad or film lies there. Age "
            "weakens the faces of the pad, towards block, lens or film, and leaves its core alone.",
            "Ask of each film: which joint does it take out, and was that one the weakest?",
        )


def _draw_stacks(draws: Draws) -> tuple[Setup, dict[str, Setup]]:
    """A stack, and the weaker ones that attract."""
    coat, film = draws.one_of(_GROUNDS)
    best = Setup(
        coat=coat,
        film=film,
        skin=draws.one_of(("clean", "clean", "fingerprint")),
        pad_age_months=draws.step(0.0, _SHELF_MONTHS, 3.0),
    )
    return best, attractive(best, old_months=draws.step(15.0, 21.0, 3.0))


def _case(best: Setup, wrong: dict[str, Setup], draws: Draws) -> StacksCase:
    count = min(len(wrong), _FEWEST + draws.whole(_MOST - _FEWEST + 1))
    taken = draws.some(tuple(wrong.items()), count)
    shown = draws.shuffled((("", best), *taken))
    return StacksCase(
        stacks=tuple(
            OfferedStack(key=key, setup=setup, slip=slip)
            for key, (slip, setup) in zip(_KEYS, shown, strict=False)
        )
    )


def _told(setup: Setup) -> str:
    joint = held(setup).weakest
    words = f"{stack_words(setup)}: weakest at {joint.name}"
    taken = [
        what
        for what, left in (("its age", joint.aged), (_DIRT_TAKES[setup.skin], joint.soiled))
        if min(left) < 1.0
    ]
    if not taken:
        return f"{words}, {_in_nm(joint.torque_nmm)} N m."
    new = _in_nm(fresh_nmm(setup, joint))
    return f"{words}, {new} N m new and clean. With {' and '.join(taken)}, {_in_nm(joint.torque_nmm)} N m."


def _in_nm(torque_nmm: float) -> str:
    return plain(torque_nmm / NMM_PER_NM, 2)
