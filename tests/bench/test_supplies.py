"""How long supplies last and when to order: by lenses, lead time and shelf life."""

import pytest

from lablib.bench.supplies import Ordering, Pace
from lablib.errors import LabError

PADS = Pace(jobs_per_day=8.0)


def test_a_thousand_pads_at_eight_jobs_a_day_last_twelve_and_a_half_weeks():
    # By hand: 16 lenses a day, 80 a week. Counting jobs for lenses would say 25 weeks.
    assert PADS.pieces_per_week == 80.0
    assert PADS.weeks(1000) == 12.5


def test_spoiled_lenses_take_theirs_again():
    # One lens in ten is cut again, and of those one in ten again: 1 / 0.9 of the lenses.
    assert Pace(jobs_per_day=9.0, spoiled_share=0.1).pieces_per_week == pytest.approx(100.0)
    assert Pace(jobs_per_day=8.0, per_lens=2.0, days_per_week=6.0).pieces_per_week == 192.0


def test_the_next_order_goes_out_before_the_box_is_empty():
    order = Ordering(pace=PADS, lead_weeks=2.0, spare_weeks=1.0, shelf_weeks=52.0)
    assert order.order_at == 240
    # 51 weeks at 80: what lies behind the spare must be used before it dries.
    assert order.order_at_most == 4080


def test_a_rest_of_the_division_makes_no_further_piece():
    # By hand: 80 / 0.1 = 800 a week. In binary figures 1 - 0.9 is a little below 0.1.
    pace = Pace(jobs_per_day=8.0, spoiled_share=0.9)
    assert pace.pieces_per_week > 800.0
    assert Ordering(pace=pace, lead_weeks=1.0, spare_weeks=0.0, shelf_weeks=52.0).order_at == 800
    # 12 / 0.95 is no whole number, and is rounded as before.
    pace = Pace(jobs_per_day=1.2, spoiled_share=0.05)
    order = Ordering(pace=pace, lead_weeks=1.0, spare_weeks=0.0, shelf_weeks=1.0)
    assert (order.order_at, order.order_at_most) == (13, 12)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: Pace(jobs_per_day=0.0), "jobs_per_day"),
        (lambda: Pace(jobs_per_day=8.0, days_per_week=8.0), "days_per_week"),
        (lambda: Pace(jobs_per_day=8.0, per_lens=0.0), "per_lens"),
        (lambda: Pace(jobs_per_day=8.0, spoiled_share=1.0), "spoiled_share"),
        (lambda: PADS.weeks(-1), "pieces"),
        (lambda: Ordering(pace=PADS, lead_weeks=-1.0, spare_weeks=1.0, shelf_weeks=52.0), "lead_weeks"),
        (
            lambda: Ordering(pace=PADS, lead_weeks=1.0, spare_weeks=52.0, shelf_weeks=52.0),
            "would dry before it is used; keep less",
        ),
    ],
)
def test_what_cannot_be_is_refused(call, said):
    with pytest.raises(LabError) as found:
        call()
    assert said in str(found.value)
