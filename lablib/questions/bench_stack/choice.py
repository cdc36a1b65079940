"""Which of several stacks holds most on the front, as a question; each wrong one has its attraction."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.setup import Setup
from lablib.questions.bench_stack.words import BENCH, held, stack_words
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import plain

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
    "lens, and what lies on the lens weakens that one too.",
)
_NEW_PAD = Slip(
    name="new-pad-against-dirt",
    step=_CHAIN_STEP,
    words="You trusted the new pad. What lies on the lens takes more from the joint than these few months "
    "take from a pad.",
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
    words="You reckoned that a film makes up for what lies on the lens. The film sticks to the lens itself, "
    "so its joint suffers as the pad's would.",
)
_COAT_GRIPS = Slip(
    name="coat-thought-to-grip",
    step=_CHAIN_STEP,
    words="You took the coated lens for the better ground. A coat takes grip away; the pad holds best on a "
    "lens without one.",
)
# What is best is clear by so much.
_CLEAR = 1.10
_FEWEST, _MOST = 2, 3
_KEYS = ("a", "b", "c", "d")
_GROUNDS = (("uncoated", False), ("coated", False), ("coated", False), ("slick", True), ("slick", True))
_NMM_PER_NM = 1000.0


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


def attractive(best: Setup, *, dirt: tuple[str, str], old_months: float) -> dict[str, Setup]:
    """Return weaker stacks that attract, by the name of the slip that leads to each.

    best: the strongest stack.
    dirt: what lies on the lens in those where something does: on a bare face, and under a film.
    old_months: age of a pad that is old [months].
    """
    slick, bare = best.coat == "slick", not best.film
    aged = best.pad_age_months > 0.0
    found = {
        _SLICK.name: not slick and replace(best, coat="slick", film=False),
        _FILM.name: not slick and bare and replace(best, film=True, skin=dirt[1]),
        _NEW_PAD.name: aged and replace(best, pad_age_months=0.0, skin=dirt[0]),
        _OLD_PAD.name: bare and replace(best, pad_age_months=old_months),
        _NO_FILM.name: slick and best.film and replace(best, film=False, pad_age_months=0.0),
        _UNDER_FILM.name: best.film and replace(best, skin=dirt[1]),
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
        while True:
            coat, film = draws.one_of(_GROUNDS)
            best = Setup(
                coat=coat,
                film=film,
                skin=draws.one_of(("clean", "clean", "clean", "fingerprint")),
                pad_age_months=draws.step(0.0, 9.0, 3.0),
            )
            dirt = draws.shuffled(("fingerprint", "oily"))
            wrong = attractive(best, dirt=dirt, old_months=draws.step(15.0, 24.0, 3.0))
            if len(wrong) >= _FEWEST:
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
        """Return what the workbook reckons with and what is asked."""
        return (
            "These stacks are pressed on alike, on the same block and under the same clamp force. They "
            "differ in coat, film, pad, and in what lies on the lens.",
            *_facts(case),
            "Which of them holds most torque on its front, from block to lens?",
        )

    def solution(self, case: StacksCase) -> Solution:
        """Return the weakest joint of each stack, the strongest stack first."""
        ordered = sorted(case.stacks, key=lambda one: -front_nmm(one.setup))
        return Solution(
            words=(
                "The front is a chain, so each stack is worth what its weakest joint bears:",
                *(_told(one.setup) for one in ordered),
                "The figures are the workbook's own estimates. Which stack is the stronger, you can trust; "
                "how strong it is, only a calibrated bench can tell.",
            )
        )

    def hints(self, case: StacksCase) -> tuple[str, ...]:
        """Return what to look for in each stack."""
        return (
            "The front is a chain. Look in each stack for its weakest joint only, and compare those.",
            "What lies on the lens weakens the joint that touches the lens, whether pad or film lies there. "
            "Age weakens the faces of the pad.",
            "Ask of each film: which joint does it take out, and was that one the weakest?",
        )


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
    held_by = held(setup)
    torque = plain(held_by.front_nmm / _NMM_PER_NM, 2)
    return f"{stack_words(setup)}: {torque} N m, weakest at {held_by.weakest.name}."


def _facts(case: StacksCase) -> tuple[str, ...]:
    """What is needed to weigh a pad's months against what lies on the lens, where both are shown."""
    setups = [one.setup for one in case.stacks]
    facts = []
    if len({setup.pad_age_months for setup in setups}) > 1:
        loss, less = BENCH.age_shear_loss_per_month, BENCH.age_friction_loss_per_month
        facts.append(f"A pad's faces lose {_shares(loss, less)} each month.")
    for name in sorted({setup.skin for setup in setups} - {"clean"}):
        skin = BENCH.skins[name]
        what = "A fingerprint" if name == "fingerprint" else "Oil"
        facts.append(f"{what} leaves {_shares(skin.shear_factor, skin.friction_factor)} where it lies.")
    return (f"The workbook reckons with this. {' '.join(facts)}",) if facts else ()


def _shares(shear: float, friction: float) -> str:
    return f"{100.0 * shear:.0f} % of the stickiness and {100.0 * friction:.0f} % of the friction"
