"""Which remedy is the cheapest that is enough, as a question with the picture of what happened without it."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from lablib.bench.gains import gain
from lablib.job.spoiled import changes, does_something, spoiled, spoiled_names
from lablib.questions.slip.picking import PickMaker
from lablib.questions.slip.pictured import drawing_of, setup_sentences
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working, plain

# The bound the question tells, and how far from it every margin keeps.
BOUND, _CLEAR = 1.5, 0.06
_CLAMP = "clamp"
_STEP = "what is enough, and what it costs"
_SYMBOLS = MappingProxyType(
    {
        "clean-lens": "g_clean",
        "dressed-wheel": "g_wheel",
        "fresh-pad": "g_pad",
        "round-block": "g_block",
        "film": "g_film",
        "back-tape": "g_tape",
        "smaller-bites": "g_bites",
        "crib": "g_crib",
    }
)
_SLIPS: Mapping[str, Slip] = MappingProxyType(
    {
        "short": Slip(
            name="not-enough",
            step=_STEP,
            words="You took a remedy that helps and does not help enough. Multiply the margin by what it "
            "gains, and hold the result against the bound.",
        ),
        "dear": Slip(
            name="dearer-than-needed",
            step=_STEP,
            words="You took a remedy that is enough, and passed over a cheaper one that is enough too.",
        ),
        "idle": Slip(
            name="nothing-to-put-right",
            step=_STEP,
            words="You put right what was in order. That leaves the margin where it was.",
        ),
        _CLAMP: Slip(
            name="more-clamp-force",
            step=_STEP,
            words="You raised the clamp force. More of it is no remedy: the lens bears only so much before "
            "its coat crazes, and the joints that stick do not stick better for it.",
        ),
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class RemedyCase:
    """A practice lens and what might have helped.

    name: of `spoiled_names`; keys: what is offered, in the order shown, "clamp" among it.
    """

    name: str
    keys: tuple[str, ...]


class RemedyFirst(PickMaker[RemedyCase]):
    """Choose the cheapest remedy that is enough."""

    name = "remedy-first"
    lesson = "12"
    skill = "cheapest-sufficient-remedy"
    by_option = _SLIPS
    slips = tuple(_SLIPS.values())

    def draw(self, draws: Draws) -> RemedyCase:
        """Return a lens that turned, the cheapest remedy that is enough, and one of each other kind."""
        name = draws.until("a lens to mend", lambda one: one.one_of(spoiled_names()), _can_be_mended)
        kinds = kinds_of(name)
        right = kinds["right"][0]
        # Dearer ones stand behind the right one, so that it is the cheapest of what is offered.
        others = [draws.one_of(kinds[kind]) for kind in ("short", "dear", "idle") if kinds[kind]]
        return RemedyCase(name=name, keys=draws.shuffled((right, *others, _CLAMP)))

    def options(self, case: RemedyCase) -> tuple[Option, ...]:
        """Return the remedies offered."""
        words = {key: _sentence(one.words) for key, one in changes().items()} | {_CLAMP: "More clamp force."}
        return tuple(Option(key=key, words=words[key]) for key in case.keys)

    def right(self, case: RemedyCase) -> str:
        """Return the cheapest of those offered whose margin reaches the bound."""
        return next(key for key in changes() if key in case.keys and _is_enough(case.name, key))

    def slip_of(self, case: RemedyCase, key: str) -> Slip:
        """Return the slip that leads to a remedy, by what the remedy does here."""
        kinds = kinds_of(case.name)
        return _SLIPS[next((kind for kind in ("short", "dear", "idle") if key in kinds[kind]), _CLAMP)]

    def prompt(self, case: RemedyCase) -> tuple[str, ...]:
        """Return the job, the order of cost, the bound, and what is asked."""
        order = "; ".join(changes()[key].words for key in changes() if key in case.keys)
        return (
            "The picture shows an invented lens after its cut in the simulation. It was set up so:",
            *setup_sentences(spoiled(case.name)),
            "Another lens like it is to be cut. From the cheapest to the dearest this lens room counts: "
            f"{order}; the table says what each multiplies the margin by here.",
            f"This lens room wants a margin of {plain(BOUND, 1)} or more. Which one thing is changed, the "
            "cheapest that is enough?",
        )

    def given(self, case: RemedyCase) -> tuple[Term, ...]:
        """Return the margin as it was, and what each remedy gains."""
        return (
            _margin_term(case.name),
            *(_gain_term(case.name, key) for key in changes() if key in case.keys),
        )

    def solution(self, case: RemedyCase) -> Solution:
        """Return the margin with each remedy."""
        margin = _margin_term(case.name)
        return Solution(
            words=(
                "A remedy multiplies the margin by what it gains. Go through them from the cheapest on, and "
                "stop at the first that reaches the bound.",
                "Cribbing is a cut of its own: on the same hold it would be as unsafe as the cut without it.",
                "Clamp force is not among the remedies: the coat crazes before it helps, and a thin lens "
                "breaks.",
                "The gains are the workbook's own estimates, and compare remedies better than they promise "
                "margins.",
            ),
            workings=tuple(
                Working(
                    what=f"margin with {changes()[key].words}",
                    symbol=f"S_{number}",
                    formula=f"S * {_SYMBOLS[key]}",
                    terms=(margin, _gain_term(case.name, key)),
                    value=margin.value * _gain_term(case.name, key).value,
                )
                for number, key in enumerate((key for key in changes() if key in case.keys), start=1)
            ),
        )

    def hints(self, case: RemedyCase) -> tuple[str, ...]:
        """Return how to weigh them."""
        return (
            "Which of them has nothing to do here? It gains nothing.",
            "Multiply the margin by what each of the others gains, the cheapest first, and stop at the "
            "bound.",
        )

    def drawing(self, case: RemedyCase) -> Drawing:
        """Return the lens as it stood on its block."""
        return drawing_of(case.name)


def _sentence(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}."


def _margin_term(name: str) -> Term:
    return Term(symbol="S", value=round(spoiled(name).cut.margin, 2), meaning="margin as it was cut")


def _gain_term(name: str, key: str) -> Term:
    value = gain(margin=spoiled(name).cut.margin, changed=spoiled(name, key).cut.margin)
    meaning = f"gain of {changes()[key].words}"
    return Term(symbol=_SYMBOLS[key], value=round(value, 2), meaning=meaning)


def _is_enough(name: str, key: str) -> bool:
    return spoiled(name, key).cut.margin >= BOUND


@cache
def kinds_of(name: str) -> dict[str, tuple[str, ...]]:
    """Return what is right for a practice lens, what falls short, what is dearer, and what has nothing to do.

    name: of `spoiled_names`. What comes too near the bound to be told by two decimals is in none of them.
    """
    kinds: dict[str, tuple[str, ...]] = {"right": (), "short": (), "dear": (), "idle": ()}
    for key in changes():
        margin = spoiled(name, key).cut.margin
        if not does_something(name, key):
            kinds["idle"] += (key,)
        elif abs(margin - BOUND) >= _CLEAR:
            enough = "dear" if kinds["right"] else "right"
            kinds[enough if margin > BOUND else "short"] += (key,)
        elif margin > BOUND and not kinds["right"]:
            # The cheapest that is enough would not be clear.
            return dict.fromkeys(kinds, ())
    return kinds


@cache
def _can_be_mended(name: str) -> bool:
    kinds = kinds_of(name)
    return spoiled(name).cut.margin < 1.0 and bool(kinds["right"] and kinds["short"])
