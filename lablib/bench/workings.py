"""The margin as workings a learner can follow: force, arm, torque, what holds, margin, probability.

Every value comes from the function that computes it elsewhere; here only the steps are put in words.
"""

import math

from lablib.bench.cutting_workings import arm_workings, force_workings, torque_working
from lablib.bench.holding_workings import hold_workings
from lablib.bench.margin import TWO_SIDED_95, CutResult, Place, log_scatter
from lablib.working import Term, Working


def peak_workings(result: CutResult) -> tuple[Working, ...]:
    """Return the steps from the bite to the greatest cutting torque.

    result: of `work_cut`.
    """
    return _turning(result, result.peak)


def margin_workings(result: CutResult) -> tuple[Working, ...]:
    """Return every step from the bite to the probability of slip, at the place with the least margin.

    result: of `work_cut`.
    """
    *first, arm, torque = _turning(result, result.least)
    holds = hold_workings(result, arm)
    return (*first, arm, torque, *holds, *_margin(result, torque, holds[-1]))


def _turning(result: CutResult, place: Place) -> tuple[Working, ...]:
    force, arms = force_workings(result, place), arm_workings(result, place)
    return (*force, *arms, torque_working(result, place, force[-1], arms[-1]))


def _margin(result: CutResult, torque: Working, hold: Working) -> tuple[Working, ...]:
    margin = Working(
        what="margin",
        symbol="S",
        formula="T_hold / M_cut",
        terms=(hold.as_term(), torque.as_term()),
        value=result.margin,
        digits=3,
    )
    return margin, *_probability(result, calibrated=False), *_probability(result, calibrated=True)


def _probability(result: CutResult, *, calibrated: bool) -> tuple[Working, ...]:
    when = "on a calibrated bench" if calibrated else "before the bench is calibrated"
    scatter = Term(
        symbol="sigma_0",
        value=result.bench.scatter,
        digits=3,
        meaning="scatter from lens to lens, natural logarithm",
    )
    doubt = Term(
        symbol="L_d",
        value=math.log(result.bench.doubt),
        digits=4,
        meaning=f"natural logarithm of the doubt, {result.bench.doubt:g}-fold either way",
    )
    two_sided = Term(symbol="z_95", value=TWO_SIDED_95, meaning="95 % of a normal distribution lie within")
    sigma = Working(
        what=f"scatter of the margin {when}",
        symbol="sigma",
        formula="sigma_0" if calibrated else "sqrt(sigma_0^2 + (L_d / z_95)^2)",
        terms=(scatter,) if calibrated else (scatter, doubt, two_sided),
        value=log_scatter(result.bench, calibrated=calibrated),
        digits=4,
    )
    away = Working(
        what="how many scatters the margin lies above 1",
        symbol="z",
        formula="L_S / sigma",
        terms=(
            Term(
                symbol="L_S",
                value=math.log(result.margin),
                digits=4,
                meaning="natural logarithm of the margin",
            ),
            sigma.as_term(),
        ),
        value=math.log(result.margin) / log_scatter(result.bench, calibrated=calibrated),
        digits=3,
    )
    chance = result.slip_probability_calibrated if calibrated else result.slip_probability
    slip = Working(
        what=f"probability of slip {when}",
        symbol="p",
        formula="100 * A_z",
        terms=(
            Term(
                symbol="A_z",
                value=chance,
                digits=4,
                meaning=f"share of a standard normal distribution beyond z = {away.result}, from its table",
            ),
        ),
        value=100.0 * chance,
        unit="%",
        digits=1,
    )
    return sigma, away, slip
