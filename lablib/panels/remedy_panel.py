"""The panel of remedies: what each change does for one lens, and the cheapest set under a bound."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from scipy.optimize import brentq

from lablib.bench.margin import log_scatter, slip_probability
from lablib.job.remedy import spoiled_lens
from lablib.job.remedy_search import RemedyPlan, RemedySet, plan_remedies
from lablib.job.report import percent
from lablib.job.spoiled import spoiled
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.remedies import RemediesPicture
from lablib.pictures.remedies_data import RemediesView, RemedyRow

# Practice lenses, by what one sees of them on the bench.
LENSES = {
    "strong minus": "line-off",
    "oily and cribbed": "bumped",
    "glazed wheel": "burnt",
    "oily minus": "oily-minus",
    "half-eye block": "half-eye-block",
    "old pad": "old-pad",
    "loaded wheel": "loaded-progressive",
    "weak minus": "holds",
}
_KEPT = 64
_FARTHEST = 1e4


@dataclass(frozen=True, slots=True, kw_only=True)
class RemedySheet(RemediesView):
    """What can be done for one lens, with the plan it was drawn from.

    plan: the search's.
    """

    plan: RemedyPlan


class RemedyPanel(Panel):
    """One practice lens, a bound, and what would bring the lens under it."""

    draws = RemediesPicture
    note = (
        "Lenses, prices and minutes are invented, margins are teaching estimates. An asterisk: it changes "
        "the order, and somebody must agree first. More clamp force is never among the changes."
    )
    controls = (
        Choice(name="lens", label="Lens", options=tuple(LENSES), value="strong minus"),
        Slider(name="bound", label="Bound", unit="%", low=1, high=50, step=1, value=10),
        Choice(name="calibrated", label="Bench calibrated", options=("no", "yes"), value="no"),
    )

    def compute(self, values: Values) -> RemedySheet:
        """Return the changes ranked, and the cheapest set under the bound.

        values: by the control's name.
        """
        calibrated = values["calibrated"] == "yes"
        bound = values["bound"] / 100.0
        plan = _plan(values["lens"], bound, calibrated)
        chosen = plan.cheapest if plan.cheapest and plan.cheapest.remedies else None
        names = chosen.names if chosen else ()
        return RemedySheet(
            plan=plan,
            now=_row("as it is", plan.now),
            singles=tuple(_row(one.names[0], one, is_chosen=one.names[0] in names) for one in plan.singles),
            chosen=_row("the set", chosen) if chosen else None,
            needed=_needed(bound, log_scatter(plan.sheet.cut.bench, calibrated=calibrated)),
        )

    def numbers(self, data: RemedySheet) -> Sequence[tuple[str, str, str]]:
        """Return margin, chance and cost as it is and with the set.

        data: from `compute`.
        """
        plan, spoiled_cost = data.plan, spoiled_lens().cost
        return [
            ("As it is: margin", f"{plan.now.margin:.2f}", ""),
            ("As it is: slip", data.now.chance, ""),
            ("As it is: lost on average", f"{plan.now.expected_loss:.2f}", ""),
            *_of_the_set(plan.cheapest),
            ("Margin at the bound", f"{data.needed:.2f}", ""),
            ("A spoiled lens costs", f"{spoiled_cost:.2f}", ""),
        ]

    def sentence(self, data: RemedySheet) -> str:
        """Return the advice.

        data: from `compute`.
        """
        plan, bound = data.plan, percent(data.plan.bound)
        if plan.cheapest is None:
            return (
                f"No set of changes brings the chance of slip to {bound}: at best {_listed(plan.best)}, "
                f"{percent(plan.best.slip_probability)}. Ask for another frame or lens before a cut."
            )
        if not plan.cheapest.remedies:
            return f"The chance of slip is {data.now.chance} and the bound {bound}: nothing needs a change."
        asked = " Ask first: it changes the order." if plan.cheapest.is_asked else ""
        return (
            f"Cheapest set under {bound}: {_listed(plan.cheapest)}. Margin "
            f"{plan.now.margin:.2f} becomes {plan.cheapest.margin:.2f}, the chance of slip {data.now.chance} "
            f"becomes {percent(plan.cheapest.slip_probability)}, for {plan.cheapest.cost:.2f}.{asked}"
        )


@lru_cache(maxsize=_KEPT)
def _plan(lens: str, bound: float, calibrated: bool) -> RemedyPlan:
    return plan_remedies(spoiled(LENSES[lens]), bound=bound, calibrated=calibrated)


def _listed(one: RemedySet) -> str:
    *first, last = one.names
    return f"{', '.join(first)} and {last}" if first else last


def _row(words: str, one: RemedySet, *, is_chosen: bool = False) -> RemedyRow:
    return RemedyRow(
        words=words,
        margin=one.margin,
        chance=percent(one.slip_probability),
        cost=f"{one.cost:.2f}" if one.remedies else "",
        is_chosen=is_chosen,
        is_asked=one.is_asked,
    )


def _of_the_set(one: RemedySet | None) -> list[tuple[str, str, str]]:
    texts = (NOT_KNOWN,) * 4
    if one is not None:
        texts = (
            f"{one.margin:.2f}",
            percent(one.slip_probability),
            f"{one.cost:.2f}",
            f"{one.expected_loss:.2f}",
        )
    labels = ("margin", "slip", "cost", "lost on average")
    return [(f"The set: {label}", text, "") for label, text in zip(labels, texts, strict=True)]


def _needed(bound: float, scatter: float) -> float:
    """The margin at which the chance of slip is the bound."""
    return brentq(lambda margin: slip_probability(margin, scatter) - bound, 1.0 / _FARTHEST, _FARTHEST)
