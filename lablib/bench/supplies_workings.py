"""How long supplies last and when to order them, as workings: from jobs to lenses to pieces."""

from lablib.bench.supplies import LENSES_PER_JOB, Ordering, Pace
from lablib.working import Term, Working

_PRACTICE = "common practice"


def pace_terms(pace: Pace) -> tuple[Term, ...]:
    """Return the numbers of a pace, ready to put in; without those that change nothing.

    pace: how fast a bench uses one kind of supply.
    """
    extras = (
        Term(symbol="k", value=pace.per_lens, digits=1, meaning="pieces used on one lens"),
        Term(symbol="s", value=pace.spoiled_share, digits=3, meaning="share of lenses that is cut again"),
    )
    return (
        Term(symbol="J", value=pace.jobs_per_day, digits=0, meaning="jobs a day"),
        Term(symbol="d_w", value=pace.days_per_week, digits=0, meaning="working days a week"),
        *(term for term, idle in zip(extras, (1.0, 0.0), strict=True) if term.value != idle),
    )


def pace_working(pace: Pace) -> Working:
    """Return how many pieces a week takes.

    pace: of whole jobs and days, pieces for a lens to one decimal, share to three.
    """
    terms = pace_terms(pace)
    known = {term.symbol for term in terms}
    used = f"{LENSES_PER_JOB:g} * J * d_w{' * k' if 'k' in known else ''}"
    return Working(
        what="pieces used in a week",
        symbol="U",
        formula=f"{used} / (1 - s)" if "s" in known else used,
        terms=terms,
        value=pace.pieces_per_week,
        digits=1,
        source=f"{_PRACTICE}; a job has {LENSES_PER_JOB:g} lenses",
    )


def weeks_workings(pace: Pace, pieces: float) -> tuple[Working, Working]:
    """Return the pieces of a week, and how long those in hand last.

    pace: as in `pace_working`; pieces: whole, in hand.
    """
    used = pace_working(pace)
    weeks = Working(
        what="how long they last",
        symbol="W",
        formula="P / U",
        terms=(Term(symbol="P", value=pieces, digits=0, meaning="pieces in hand"), used.as_term()),
        value=pace.weeks(pieces),
        unit="weeks",
        digits=1,
    )
    return used, weeks


def ordering_terms(ordering: Ordering) -> tuple[Term, Term, Term]:
    """Return lead time, spare and shelf life, ready to put in.

    ordering: of weeks to one decimal.
    """
    rows = (
        ("t_lead", ordering.lead_weeks, "from order to delivery"),
        ("t_spare", ordering.spare_weeks, "covered by the spare"),
        ("t_shelf", ordering.shelf_weeks, "from delivery until it dries"),
    )
    lead, spare, shelf = (
        Term(symbol=symbol, value=value, unit="weeks", digits=1, meaning=meaning)
        for symbol, value, meaning in rows
    )
    return lead, spare, shelf


def order_at_workings(ordering: Ordering) -> tuple[Working, Working]:
    """Return the pieces of a week, and in how many left the next order goes out, before it is rounded up.

    ordering: as in `ordering_terms`.
    """
    used, (lead, spare, _) = pace_working(ordering.pace), ordering_terms(ordering)
    at = Working(
        what="order at so many left; if not whole, the next whole number",
        symbol="R",
        formula="U * (t_lead + t_spare)",
        terms=(used.as_term(), lead, spare),
        value=ordering.kept_back,
        digits=1,
        source=_PRACTICE,
    )
    return used, at


def order_at_most_workings(ordering: Ordering) -> tuple[Working, Working]:
    """Return the pieces of a week, and the most to order at once, before it is rounded down.

    ordering: as in `ordering_terms`.
    """
    used, (_, spare, shelf) = pace_working(ordering.pace), ordering_terms(ordering)
    most = Working(
        what="order no more at once; if not whole, the whole number below",
        symbol="Q",
        formula="U * (t_shelf - t_spare)",
        terms=(used.as_term(), shelf, spare),
        value=ordering.used_in_time,
        digits=1,
        source=_PRACTICE,
    )
    return used, most
