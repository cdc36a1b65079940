"""What counting spoiled lenses shows, as workings: pooled share, limits of a batch, none in so many."""

from lablib.bench.trials import CHART_SCATTERS, ShareChart, share_at_most
from lablib.working import Term, Working

_CHART = "chart of shares, limits at three standard deviations; normal approximation of the binomial"
_EXACT = "exact one-sided bound of the binomial distribution"


def pooled_working(chart: ShareChart) -> Working:
    """Return the pooled share of a chart, from what was counted in all batches together.

    chart: of the share spoiled.
    """
    return Working(
        what="pooled share",
        symbol="p",
        formula="100 * c / n_all",
        terms=(
            Term(symbol="c", value=sum(chart.counts), digits=0, meaning="spoiled in all batches"),
            Term(symbol="n_all", value=sum(chart.sizes), digits=0, meaning="cut in all batches"),
        ),
        value=100.0 * chart.share,
        unit="%",
        digits=3,
    )


def limit_workings(chart: ShareChart, batch: int) -> tuple[Working, Working, Working]:
    """Return the pooled share, how far the limits lie from it for one batch, and the upper limit.

    chart: of the share spoiled; batch: which one, counted from 1, with an upper limit below 1.
    """
    share, size = pooled_working(chart), chart.sizes[batch - 1]
    reach = Working(
        what="how far the limits lie from the pooled share",
        symbol="r_p",
        formula=f"{CHART_SCATTERS:g} * sqrt(p * (100 - p) / n_b)",
        terms=(share.as_term(), Term(symbol="n_b", value=size, digits=0, meaning="cut in this batch")),
        value=100.0 * float(chart.upper[batch - 1] - chart.share),
        unit="%",
        source=_CHART,
    )
    upper = Working(
        what="upper limit of the batch",
        symbol="p_high",
        formula="p + r_p",
        terms=(share.as_term(), reach.as_term()),
        value=100.0 * float(chart.upper[batch - 1]),
        unit="%",
    )
    return share, reach, upper


def none_working(of: int) -> Working:
    """Return below which share the true one lies, with 95 % confidence, when none was found.

    of: lenses seen.
    """
    return Working(
        what="at most, 95 % sure, when none was spoiled",
        symbol="p_most",
        formula="100 * (1 - a^(1 / n_L))",
        terms=(
            Term(symbol="a", value=0.05, meaning="chance of being wrong"),
            Term(symbol="n_L", value=of, digits=0, meaning="lenses seen"),
        ),
        value=100.0 * share_at_most(0, of),
        unit="%",
        source=_EXACT,
    )
