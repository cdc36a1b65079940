"""What a good model must reproduce, as orderings over random jobs, machines and grips.

Drawn evenly from the ranges of the table. Where an ordering follows from the formulas it is a property of
any job; where it does not, 250 fixed jobs are counted and the exceptions are said.
"""

from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from random_jobs import Job, job

from lablib.bench.machine import Bench, coat_names, lens_material, skin_names, wheel_names

JOBS = 250
jobs = st.builds(job, st.integers(0, 10**9), material=st.none() | st.just("crown-glass-1.523"))


def rising(values: list) -> bool:
    """Whether no value is below the one before it, but for rounding."""
    return all(one <= other * (1.0 + 1e-9) for one, other in pairwise(values))


@settings(deadline=None)
@given(one=jobs)
def test_a_higher_minus_never_raises_the_margin(one: Job):
    # Not strictly: where the motor is at its limit the force cannot grow.
    power = one.parts["power_d"]
    margins = [one.margin({"power_d": power - step}) for step in (2.0, 1.0, 0.0)]
    assert rising(margins)


@settings(deadline=None)
@given(one=jobs)
def test_coats_film_and_tape(one: Job):
    coats = [one.margin(coat=coat) for coat in reversed(coat_names())]
    assert rising(coats)
    assert coats[0] < coats[1] < coats[2]
    # Not strictly for the film: where the core is the weakest joint a better face adds nothing.
    assert rising([one.margin(), one.margin(film=True)])
    assert one.margin(film=True) < one.margin(film=True, back_tape=True)


@settings(deadline=None)
@given(one=jobs)
def test_skins_wheels_blocks_and_an_idle_tip(one: Job):
    assert rising([one.margin(skin=skin) for skin in reversed(skin_names())])
    assert rising([one.margin(wheel=wheel) for wheel in reversed(wheel_names())])
    assert one.margin(block="half-eye") < one.margin()
    assert one.margin(back_tip_idles=True) < one.margin()


@settings(deadline=None)
@given(one=jobs, months=st.floats(0.0, 24.0), warmer=st.floats(0.0, 12.0))
def test_old_and_warm_pads(one: Job, months: float, warmer: float):
    assert rising([one.margin(pad_age_months=months), one.margin()])
    assert rising([one.margin(temperature_c=23.0 + warmer), one.margin()])


@cache
def counted(seed: int, standard: bool) -> dict[str, float]:
    """Margins of one fixed job, on a random bench or on the table's defaults."""
    one = job(seed)
    if standard:
        one = replace(one, bench=Bench(), material=lens_material(one.material.name))
    blank = one.parts["blank_mm"]
    return {
        "as it is": one.margin(),
        "larger blank": one.margin({"blank_mm": blank + 3.0}),
        "crib 4": one.margin(crib_allowance_mm=4.0),
        "crib 2": one.margin(crib_allowance_mm=2.0),
        "film": one.margin(film=True),
        "film and crib 2": one.margin(film=True, crib_allowance_mm=2.0),
        "with": one.margin(wheel_sense="with"),
        **{
            f"depth {depth:g}": one.margin(material={"depth_per_turn_mm": depth})
            for depth in (3.0, 2.0, 1.5, 1.0)
        },
        **{f"kappa {kappa:g}": one.margin(material={"kappa": kappa}) for kappa in (0.3, 0.5, 0.8)},
    }


def exceptions(worse: str, better: str, *, standard: bool) -> list[float]:
    """By how much the ordering fails, over the fixed jobs: only the failures, as a share."""
    shares = [counted(seed, standard)[worse] / counted(seed, standard)[better] - 1.0 for seed in range(JOBS)]
    return [share for share in shares if share > 1e-9]


@pytest.mark.parametrize("standard", [False, True], ids=["random bench", "default bench"])
@pytest.mark.parametrize(
    ("worse", "better"),
    [
        ("as it is", "crib 2"),
        ("film", "film and crib 2"),
        ("crib 2", "film and crib 2"),
        ("depth 3", "depth 2"),
        ("depth 2", "depth 1.5"),
        ("depth 1.5", "depth 1"),
        ("kappa 0.3", "kappa 0.5"),
        ("kappa 0.5", "kappa 0.8"),
        ("as it is", "with"),
    ],
)
def test_orderings_without_an_exception(worse: str, better: str, standard: bool):
    assert exceptions(worse, better, standard=standard) == []


@pytest.mark.parametrize(
    ("worse", "better", "standard", "fails", "at_most"),
    [
        # A larger blank moves where its rim joins the outline and where each turn begins; at those corners
        # the contact surges, and the worst place is one of them.
        ("larger blank", "as it is", False, 7, 0.06),
        ("larger blank", "as it is", True, 2, 0.04),
        # Four millimetres round a flat-ended outline are two full bites on a rim along which the contact
        # surges: on a small blank that is worse than the round itself. Two millimetres never are.
        ("as it is", "crib 4", False, 5, 0.14),
        ("as it is", "crib 4", True, 6, 0.16),
        ("crib 4", "crib 2", False, 0, 0.0),
        ("crib 4", "crib 2", True, 0, 0.0),
    ],
)
def test_orderings_with_exceptions(worse: str, better: str, standard: bool, fails: int, at_most: float):
    shares = exceptions(worse, better, standard=standard)
    assert len(shares) == fails
    assert max(shares, default=0.0) <= at_most


def test_film_and_crib_together_are_best():
    for standard in (False, True):
        for seed in range(JOBS):
            margins = counted(seed, standard)
            best = max(margins[name] for name in ("as it is", "crib 2", "film", "film and crib 2"))
            assert margins["film and crib 2"] == pytest.approx(best, rel=1e-9)
