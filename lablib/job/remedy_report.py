"""What can be done so that the lenses of a job hold, as lines to read at the bench."""

import textwrap
from collections.abc import Iterator

from lablib.errors import LabError
from lablib.job.eye_sheet import EyeSheet
from lablib.job.how_sure import how_sure
from lablib.job.remedy import spoiled_lens
from lablib.job.remedy_search import RemedyPlan, RemedySet, plan_remedies
from lablib.job.report import percent
from lablib.job.sheet import JobSheet

_WIDTH, _WORDS = 96, 50
_NEVER = (
    "More clamp force is never among them: it bends the lens and crazes the coat, and a weak joint stays "
    "a weak joint. Nor is anything wiped or sprayed on the coat that its maker does not allow."
)
_PRICES = "Prices and minutes are those of an invented lab. The ranking is surer than the figures."


def remedies_text(sheet: JobSheet) -> str:
    """Return the remedies of every lens of a job, ranked, and the cheapest set that is enough.

    sheet: a worked ticket.
    """
    parts = [line for eye in sheet.eyes for line in _lens(eye)]
    # Where nothing could be ranked there is no figure to trust or doubt.
    ends = f"{_PRICES} {how_sure(sheet)}" if any(eye.cut for eye in sheet.eyes) else _PRICES
    return "\n".join([*parts, *textwrap.wrap(_NEVER, _WIDTH), "", *textwrap.wrap(ends, _WIDTH)])


def _lens(eye: EyeSheet) -> Iterator[str]:
    try:
        plan = plan_remedies(eye)
    except LabError as fault:
        yield from (*textwrap.wrap(str(fault), _WIDTH), "")
        return
    yield from _ranked(plan)
    yield ""
    yield from textwrap.wrap(_advice(plan), _WIDTH)
    yield ""


def _ranked(plan: RemedyPlan) -> Iterator[str]:
    yield f"Remedies for the {plan.sheet.eye} lens, each alone, the greatest margin first"
    yield f"{'':{_WORDS}}{'margin':>8}{'chance of slip':>17}{'cost':>8}{'min':>7}"
    yield _row("as ordered", plan.now)
    for one in plan.singles:
        (remedy,) = one.remedies
        yield _row(f"{remedy.words}{' *' if remedy.is_asked else ''}", one)
    if any(one.is_asked for one in plan.singles):
        yield "* changes the order: dispenser or prescriber must agree first"


def _row(words: str, one: RemedySet) -> str:
    *first, last = textwrap.wrap(words, _WORDS - 2, subsequent_indent="  ")
    figures = f"{one.margin:8.2f}{percent(one.slip_probability):>17}{one.cost:8.2f}{one.minutes:7.1f}"
    return "\n".join([*first, f"{last:{_WORDS}}{figures}"])


def _advice(plan: RemedyPlan) -> str:
    bound, lost = percent(plan.bound), spoiled_lens().cost
    if plan.cheapest is None:
        return (
            f"No set of changes brings the chance of slip to {bound} or less; the best is "
            f"{_listed(plan.best)}. Ask for another frame or another lens before anything is cut."
        )
    if not plan.cheapest.remedies:
        chance = percent(plan.now.slip_probability)
        return f"The chance of slip is {chance}, the bound {bound}: nothing needs to be changed."
    asked = " Ask first: it changes the order." if plan.cheapest.is_asked else ""
    return (
        f"Cheapest set under the bound of {bound}: {_listed(plan.cheapest)}. A spoiled lens costs "
        f"{lost:.2f}; as ordered {plan.now.expected_loss:.2f} of that is lost on average, with the set "
        f"{plan.cheapest.expected_loss:.2f}.{asked}"
    )


def _listed(one: RemedySet) -> str:
    said = " and ".join(remedy.words for remedy in one.remedies)
    return f"{said} (margin {one.margin:.2f}, {percent(one.slip_probability)}, cost {one.cost:.2f})"
