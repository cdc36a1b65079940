"""The demo log: every row good and in a week, and what the lesson shows with it is there."""

from collections import Counter
from datetime import timedelta

from lablib.bench.trials import ShareChart
from lablib.job.demo_log import demo_log, demo_weeks


def chart() -> ShareChart:
    weeks = demo_weeks()
    counts = demo_log().counts([week.first_day for week in weeks])
    return ShareChart(counts=counts, sizes=[week.lenses for week in weeks])


def test_every_row_is_good_and_lies_in_a_week():
    log, weeks = demo_log(), demo_weeks()
    assert log.faults == ()
    assert all(week.first_day.weekday() == 0 for week in weeks)
    end = weeks[-1].first_day + timedelta(days=7)
    assert all(weeks[0].first_day <= row.day < end for row in log.rows)
    assert sum(chart().counts) == len(log.rows)


def test_the_week_with_the_highest_share_is_not_the_one_outside():
    found = chart()
    assert int(found.shares.argmax()) + 1 == 4
    assert found.outside == (13,)


def test_each_cause_has_one_station_and_one_that_found_most_of_it():
    # The panel says "mostly found by": two that found as many would make that untrue.
    for name in (cause.name for cause in demo_log().causes()):
        rows = [row for row in demo_log().rows if row.cause == name]
        assert len({row.station for row in rows}) == 1
        most, *others = (count for _, count in Counter(row.found_by for row in rows).most_common())
        assert all(most > count for count in others), name


def test_the_dearest_cause_is_not_the_most_frequent():
    causes = demo_log().causes()
    assert max(causes, key=lambda cause: cause.count).name == "scratched"
    assert causes[0].name == "segment or cross height"
    assert causes[0].count < 6
