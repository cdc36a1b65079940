"""What the questions about bench care share: a count as a term, and the step from jobs to lenses."""

from lablib.bench.supplies import LENSES_PER_JOB
from lablib.study.question import Slip
from lablib.working import Term, Working

JOBS_FOR_LENSES = Slip(
    name="jobs-for-lenses",
    step="how many lenses a job has",
    words="You counted jobs where lenses count. A job has two lenses, and each of them is blocked, cut and "
    "may be spoiled by itself.",
)


def count_term(symbol: str, value: float, meaning: str) -> Term:
    """Return a whole number as a term.

    symbol, value, meaning: as in `Term`.
    """
    return Term(symbol=symbol, value=float(value), digits=0, meaning=meaning)


def lenses_of(jobs: int) -> int:
    """Return how many lenses so many jobs have.

    jobs: pairs.
    """
    return round(LENSES_PER_JOB * jobs)


def lenses_working(jobs: Term, symbol: str, what: str) -> Working:
    """Return the step from jobs to lenses.

    jobs: how many; symbol, what: of the lenses.
    """
    return Working(
        what=what,
        symbol=symbol,
        formula=f"{LENSES_PER_JOB:g} * {jobs.symbol}",
        terms=(jobs,),
        value=LENSES_PER_JOB * jobs.value,
        digits=0,
    )
