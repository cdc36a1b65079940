"""Questions about bench care: the curriculum's own examples, and what the general tests cannot see."""

from collections import Counter

import pytest
from made_questions import answered, questions

from lablib.bench.spoilage_log import SpoilageLog
from lablib.bench.supplies import Ordering, Pace
from lablib.bench.trials import ShareChart, lenses_each_way, readings_each_way, two_ways_p
from lablib.datafile import read_table
from lablib.questions.bench_care.causes import CausesCase
from lablib.questions.bench_care.chart_limit import LimitCase
from lablib.questions.bench_care.difference import DifferenceCase
from lablib.questions.bench_care.hygiene import items
from lablib.questions.bench_care.none_spoiled import NoneCase
from lablib.questions.bench_care.ordering import OrderCase
from lablib.questions.bench_care.pads_last import SupplyCase
from lablib.questions.bench_care.spoiled_share import ShareCase
from lablib.questions.makers import MAKERS
from lablib.study.draws import Draws


def test_a_thousand_pads_last_12_5_weeks_and_not_25():
    # Curriculum: 1,000 pads at 8 jobs a day, 5 days a week.
    case = SupplyCase(things="pads", pieces=1000, pace=Pace(jobs_per_day=8.0))
    assert answered("pads-last", case) == pytest.approx(12.5)
    assert answered("pads-last", case, "jobs-for-lenses") == pytest.approx(25.0)


def test_three_lenses_spoiled_in_60_jobs_are_2_5_percent_and_not_5():
    # Curriculum.
    case = ShareCase(jobs=(40, 20), spoiled=(1, 2))
    assert answered("spoiled-share", case) == pytest.approx(2.5)
    assert answered("spoiled-share", case, "jobs-for-lenses") == pytest.approx(5.0)
    assert answered("spoiled-share", case, "mean-of-shares") == pytest.approx((1.25 + 5.0) / 2.0)


def test_none_in_60_is_at_most_4_9_percent_and_not_never():
    # Curriculum: one-sided 95 % bound, exact.
    case = NoneCase(tried="a new pad", happened="turned", jobs=30)
    assert answered("none-in-so-many", case) == pytest.approx(4.9, abs=0.05)
    assert answered("none-in-so-many", case, "none-read-as-never") == 0.0
    assert answered("none-in-so-many", case, "one-in-so-many") == pytest.approx(100.0 / 60.0)


def test_three_in_so_many_is_taken_for_the_bound():
    for question in questions("none-in-so-many"):
        lenses = 2.0 * question.given[0].value
        assert question.kind.matches(round(300.0 / lenses, 1), question.right)


def test_twelve_against_eight_shows_nothing():
    case = DifferenceCase(of=200, old=12, new=8, keys=("shown", "open", "alike", "turned"))
    assert answered("difference-shown", case) == "open"
    assert answered("difference-shown", case, "difference-read-as-proof") == "shown"
    assert case.chance == two_ways_p(12, 200, 8, 200)


def test_what_a_difference_shows_is_asked_both_ways():
    found = Counter(question.right for question in questions("difference-shown"))
    assert set(found) == {"open", "shown"}
    assert min(found.values()) > 150


def test_limits_are_those_of_the_chart():
    case = LimitCase(spoiled=(3, 4, 2, 4), cut=(84, 92, 78, 24))
    chart = ShareChart(counts=case.spoiled, sizes=case.cut)
    assert answered("chart-limit", case) == pytest.approx(100.0 * chart.upper[-1])
    assert answered("chart-limit", case, "mean-of-shares") > answered("chart-limit", case)
    one = answered("chart-limit", case, "one-standard-deviation")
    assert answered("chart-limit", case) - 100.0 * chart.share == pytest.approx(
        3.0 * (one - 100.0 * chart.share)
    )


def test_an_upper_limit_is_never_cut_off_at_all_lenses():
    assert max(question.right for question in questions("chart-limit")) < 100.0


def test_order_point_and_most_to_order():
    pace = Pace(jobs_per_day=8.0)
    ordering = Ordering(pace=pace, lead_weeks=2.0, spare_weeks=1.0, shelf_weeks=52.0)
    case = OrderCase(things="pads", ordering=ordering, offer=5000)
    assert answered("order-at", case) == 240.0
    assert answered("order-at", case, "ordered-when-empty") == 0.0
    assert answered("order-at", case, "jobs-for-lenses") == 120.0
    assert answered("order-at-most", case) == 80.0 * 51.0
    assert answered("order-at-most", case, "buys-what-dries") == 5000.0


def test_an_offer_is_always_more_than_is_used_before_it_dries():
    for question in questions("order-at-most"):
        offer = next(term.value for term in question.given if term.symbol == "O")
        assert offer > question.right


def test_causes_are_ranked_by_count_times_cost():
    case = CausesCase(
        names=("scratched", "turned on the block", "crazed coat"), counts=(25, 9, 3), each=(20.0, 80.0, 70.0)
    )
    assert answered("causes-by-money", case) == ("turned on the block", "scratched", "crazed coat")
    assert answered("causes-by-money", case, "ranked-by-count")[0] == "scratched"
    assert isinstance(case.log, SpoilageLog)
    assert case.log.cost == pytest.approx(25 * 20.0 + 9 * 80.0 + 3 * 70.0)


def test_causes_are_never_shown_in_the_right_order():
    for question in questions("causes-by-money"):
        assert tuple(option.key for option in question.kind.options) != question.right


def test_one_trial_alone_is_large_enough_and_either_may_be_it():
    maker, found = MAKERS["trial-that-shows"], Counter()
    for seed in range(200):
        case = maker.draw(Draws(seed))
        lenses, torques = lenses_each_way(*case.shares), readings_each_way(*case.reading)
        assert (case.lenses >= 2 * lenses) != (case.torques >= 2 * torques)
        assert lenses < case.lenses
        assert torques < case.torques
        found[answered("trial-that-shows", case)] += 1
    assert min(found["count"], found["measure"]) > 60


def test_the_steps_of_a_morning_stand_in_an_order_that_every_slip_breaks():
    table = read_table("lablib.questions.bench_care", "morning.toml")
    steps = list(table["step"])
    for name, slip in table["slip"].items():
        assert steps.index(slip["late"]) < steps.index(slip["early"]), name


def test_machine_and_focimeter_are_never_both_in_one_morning():
    # Which of the two comes first is a matter of taste.
    for question in questions("morning-check"):
        assert not {"still", "zero"} <= set(question.right)


def test_no_two_habits_of_one_question_are_about_the_same_thing():
    for question in questions("bench-hygiene"):
        themes = [items()[option.key].theme for option in question.kind.options]
        assert len(set(themes)) == len(themes)
        assert 2 <= len(question.right) <= 3
