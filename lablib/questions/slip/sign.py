"""Which sign a lens shows, and what that tells of when it turned: two questions on the same pictures."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lablib.bench.signs import BUMPED_OUTLINE, BURNT_PATCH, LINE_OFF_LEVEL, NONE
from lablib.job.spoiled import spoiled, spoiled_job, spoiled_names
from lablib.questions.slip.picking import PickMaker
from lablib.questions.slip.pictured import drawing_of, setup_sentences
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Drawing, Slip, Solution

_SCREEN = "A lens turns on its block on the screen only: on the bench nobody drives one to slip to see it."
_LOOK = "which mark is looked at, and in which order"
_SHOWS = {
    NONE: "Nothing: line level, outline as ordered, coat sound.",
    LINE_OFF_LEVEL: "A line off level and nothing more.",
    BUMPED_OUTLINE: "A bumped outline.",
    BURNT_PATCH: "A burnt patch under the block.",
}
_WHY = {
    NONE: "The line lies level with the block's, and the rim follows the ordered outline all round.",
    LINE_OFF_LEVEL: "The line stands out of the level with the block's, and the rim follows the ordered "
    "outline all round: the lens has turned, and what was cut in the meantime was trued afterwards.",
    BUMPED_OUTLINE: "The rim runs inside the ordered outline at a place: something was cut there that the "
    "order still needed. What is cut stays cut.",
    BURNT_PATCH: "The coat is marked where the block lay. That takes many turns of rubbing, and after many "
    "turns the line may lie anywhere and the outline is short.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SignCase:
    """A practice lens after its cut.

    name: of `spoiled_names`; keys: of the options, in the order shown.
    """

    name: str
    keys: tuple[str, ...]

    @property
    def sign(self) -> str:
        """The sign that tells most, by the simulation."""
        return spoiled(self.name).simulation.sign


class _OfALens(PickMaker[SignCase]):
    """Asks about the picture of a practice lens."""

    words: Mapping[str, str]
    lesson = "12"

    def options(self, case: SignCase) -> tuple[Option, ...]:
        """Return what may be said of it."""
        return tuple(Option(key=key, words=self.words[key]) for key in case.keys)

    def right(self, case: SignCase) -> str:
        """Return the sign that the simulation gives."""
        return case.sign

    def drawing(self, case: SignCase) -> Drawing:
        """Return the lens as it stands on its block."""
        return drawing_of(case.name)

    def _told(self, case: SignCase) -> tuple[str, ...]:
        """Return the lens and the caution."""
        first, *_ = setup_sentences(spoiled(case.name))
        return (
            f"An invented lens on its block, cut in the simulation, facing you. {first}",
            f"The block's line is level. {_SCREEN}",
        )


class WhichSign(_OfALens):
    """Tell the sign that says most on a lens that comes off the machine."""

    name = "which-sign"
    skill = "signs-of-slip"
    words = MappingProxyType(_SHOWS)
    by_option = MappingProxyType(
        {
            NONE: Slip(
                name="sign-overlooked",
                step=_LOOK,
                words="You saw no sign. Lay the lens's line against the block's, then follow the rim along "
                "the ordered outline, then look at the coat where the block lay.",
            ),
            LINE_OFF_LEVEL: Slip(
                name="line-alone-looked-at",
                step=_LOOK,
                words="You named the line alone. Is it off level at all, and is it all there is? Follow the "
                "rim and look at the coat too.",
            ),
            BUMPED_OUTLINE: Slip(
                name="outline-misread",
                step=_LOOK,
                words="You named the outline as what tells most. Is the rim short anywhere, and is nothing "
                "to be seen that takes more turning than a short rim?",
            ),
            BURNT_PATCH: Slip(
                name="heat-read-into-it",
                step=_LOOK,
                words="You named a burnt patch. A patch is on the coat where the block lay, and it takes "
                "several whole turns of rubbing: a few degrees leave none.",
            ),
        }
    )
    slips = tuple(by_option.values())

    def draw(self, draws: Draws) -> SignCase:
        """Return a practice lens, and the options in any order."""
        return SignCase(name=draws.one_of(spoiled_names()), keys=draws.shuffled(tuple(_SHOWS)))

    def prompt(self, case: SignCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            *self._told(case),
            "Which sign does it show? Where there are several, pick the one that takes the most turning.",
        )

    def solution(self, case: SignCase) -> Solution:
        """Return what is to be seen."""
        return Solution(words=(_WHY[case.sign], _measured(case)))

    def hints(self, case: SignCase) -> tuple[str, ...]:
        """Return in which order to look."""
        return (
            "Look at three things, one after the other: the line, the rim, the coat.",
            "Of the three, a rubbed coat takes the most turning, then a short rim, then a line.",
        )


def _measured(case: SignCase) -> str:
    ran = spoiled(case.name).simulation
    if ran.begins is None:
        return f"In the simulation it never slid: its margin was {ran.result.margin:.1f}."
    short = f"short by {ran.shortfall_mm:.1f} mm" if BUMPED_OUTLINE in ran.signs else "nowhere short"
    return (
        f"In the simulation it turned by {ran.slip_deg:.0f} degrees in all, its rim is {short}, and its coat "
        f"warmed by {ran.rise_k:.0f} kelvin. Degrees are not predicted: that there is trouble, and which "
        "kind, is what holds."
    )


_WHEN = "what later turns can still put right"
_THEN = {
    LINE_OFF_LEVEL: "It turned while stock was left all round, and later turns trued the outline.",
    BUMPED_OUTLINE: "It turned when part of the rim was cut to shape: turned away, that part is too small.",
    BURNT_PATCH: "It went round on its block, turn after turn, until pad and coat were rubbed.",
}
_LEADS = MappingProxyType(
    {
        ("early", LINE_OFF_LEVEL): Slip(
            name="early-for-late",
            step=_WHEN,
            words="You said that later turns trued the outline. They can do that only while stock is left: "
            "here the rim lies inside the order at a place, so that place was cut too deep.",
        ),
        ("late", BUMPED_OUTLINE): Slip(
            name="late-for-early",
            step=_WHEN,
            words="You said that part of the rim was at its depth when the lens turned. Then the rim would "
            "be short there. It follows the order all round.",
        ),
        ("heat", BURNT_PATCH): Slip(
            name="heat-from-little-turning",
            step=_WHEN,
            words="You said that it went round turn after turn. A coat that was rubbed so long shows a "
            "patch: this one is sound.",
        ),
        ("hot", LINE_OFF_LEVEL): Slip(
            name="patch-left-out-for-the-line",
            step=_WHEN,
            words="You read the line alone. The coat is marked where the block lay, and a turn that later "
            "turns put right leaves no patch.",
        ),
        ("hot", BUMPED_OUTLINE): Slip(
            name="patch-left-out-for-the-rim",
            step=_WHEN,
            words="You read the rim alone. It is short, but the coat is marked too: that takes many turns "
            "of rubbing, and not one slide.",
        ),
    }
)


class EarlyOrLate(_OfALens):
    """Tell from the sign when the lens turned."""

    name = "early-or-late"
    skill = "when-it-turned"
    words = MappingProxyType(_THEN)
    by_option = MappingProxyType({})
    slips = tuple(_LEADS.values())

    def draw(self, draws: Draws) -> SignCase:
        """Return a practice lens that turned, and the options in any order."""
        name = draws.until(
            "a lens that turned", lambda one: one.one_of(spoiled_names()), lambda one: _shows(one) != NONE
        )
        return SignCase(name=name, keys=draws.shuffled(tuple(_THEN)))

    def slip_of(self, case: SignCase, key: str) -> Slip:
        """Return the slip that leads to a wrong option: it hangs on what is right."""
        if case.sign == BURNT_PATCH:
            return _LEADS["hot", key]
        return next(slip for (kind, to), slip in _LEADS.items() if to == key and kind != "hot")

    def prompt(self, case: SignCase) -> tuple[str, ...]:
        """Return the lens, how it was set up, and what is asked."""
        return (
            *self._told(case),
            f"It was set up so: {spoiled_job(case.name).words}.",
            "What does the picture say about when, or how often, it turned?",
        )

    def solution(self, case: SignCase) -> Solution:
        """Return what is to be seen, and what it tells."""
        return Solution(words=(_WHY[case.sign], _THEN[case.sign], _measured(case)))

    def hints(self, case: SignCase) -> tuple[str, ...]:
        """Return what later turns can do."""
        return (
            "While stock is left, the wheel still cuts all round, and what was cut askew is cut away.",
            "Ask of the rim whether anything is missing. What is cut stays cut.",
            "Ask of the coat whether it was rubbed for long.",
        )


def _shows(name: str) -> str:
    return spoiled(name).simulation.sign
