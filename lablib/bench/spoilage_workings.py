"""What one spoiled lens costs, as workings: the labour, then everything that is paid again."""

from lablib.bench.spoilage import SpoiledLens
from lablib.working import Term, Working

_PRACTICE = "common practice"


def paid_terms(spoiled: SpoiledLens) -> tuple[Term, ...]:
    """Return what is paid or worked again, ready to put in; without what costs nothing.

    spoiled: the lens.
    """
    extras = (
        Term(symbol="V", value=spoiled.delivery, meaning="second delivery"),
        Term(symbol="C", value=spoiled.coat, meaning="coat of the new lens, charged apart"),
    )
    return (
        Term(symbol="P", value=spoiled.lens_price, meaning="price of the lens"),
        Term(symbol="t", value=spoiled.labour_min, unit="min", digits=0, meaning="work done again"),
        Term(symbol="r", value=spoiled.hourly_rate, digits=2, meaning="rate for an hour of that work"),
        *(term for term in extras if term.value),
    )


def spoilage_workings(spoiled: SpoiledLens) -> tuple[Working, Working]:
    """Return the labour and what the spoiled lens costs.

    spoiled: the lens; its minutes and sums of money to two decimals at most.
    """
    price, minutes, rate, *extras = paid_terms(spoiled)
    labour = Working(
        what="labour, with the minutes as part of an hour",
        symbol="L",
        formula="r * t / 60",
        terms=(rate, minutes),
        value=spoiled.labour,
    )
    paid = (price, labour.as_term(), *extras)
    whole = Working(
        what="what the spoiled lens costs",
        symbol="cost",
        formula=" + ".join(term.symbol for term in paid),
        terms=paid,
        value=spoiled.cost,
        source=_PRACTICE,
    )
    return labour, whole
