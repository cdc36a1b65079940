"""Remedies: each changes what it says, the search agrees with trying everything, and the list is honest."""

import random
from dataclasses import replace

import pytest

from lablib.bench.margin import log_scatter, slip_probability
from lablib.command import main
from lablib.errors import LabError
from lablib.job.demo import demo_ticket
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.remedy import PARTS, changed, remedies, spoiled_lens
from lablib.job.remedy_report import remedies_text
from lablib.job.remedy_search import RemedyPlan, plan_remedies
from lablib.job.sheet import work
from lablib.job.ticket import Ticket

TROUBLED = {
    "skin": "fingerprint",
    "block": "half-eye",
    "block_face": "worn",
    "pad_age_months": 10.0,
    "tip_stiffness": "stiff",
    "tip_face_mm": 200.0,
    "block_curve_d": 6.0,
}


def hard(**blocking: object) -> EyeSheet:
    """The hard demo job, its right lens, with something about the blocking changed."""
    ticket = demo_ticket("hard-minus")
    return worked(replace(ticket, blocking=replace(ticket.blocking, **blocking)))


def worked(ticket: Ticket) -> EyeSheet:
    return work_eye(ticket, ticket.right)


@pytest.fixture(scope="module")
def troubled() -> EyeSheet:
    return hard(**TROUBLED)


@pytest.fixture(scope="module")
def plan(troubled: EyeSheet) -> RemedyPlan:
    return plan_remedies(troubled)


def test_the_clamp_is_never_among_them(troubled: EyeSheet):
    for name, remedy in remedies().items():
        assert "clamp" not in f"{name} {remedy.words}"
        ticket = changed(troubled, name)
        assert ticket is None or ticket.blocking.clamp_force_n == troubled.ticket.blocking.clamp_force_n


@pytest.mark.parametrize("name", remedies())
def test_each_costs_something_in_money_or_time_and_is_of_a_known_part(name: str):
    remedy = remedies()[name]
    assert remedy.part in PARTS
    assert remedy.cost > 0.0
    assert remedy.cost == pytest.approx(remedy.money + remedy.minutes * 24.0 / 60.0)


@pytest.mark.parametrize(
    ("name", "where", "key", "value"),
    [
        ("clean lens", "blocking", "skin", "clean"),
        ("clean block", "blocking", "block_face", "clean"),
        ("fresh pad", "blocking", "pad_age_months", 0.0),
        ("round block", "blocking", "block", "round"),
        ("matched block", "blocking", "block_curve_d", None),
        ("matched tip", "blocking", "tip_face_mm", None),
        ("back tape", "blocking", "back_tape", True),
        ("film", "blocking", "film", True),
        ("dressed wheel", "cut", "wheel", "sharp"),
        ("smaller bites", "cut", "depth_per_turn_mm", 1.0),
        ("crib", "cut", "crib_allowance_mm", 2.0),
    ],
)
def test_each_changes_what_it_says(troubled: EyeSheet, name: str, where: str, key: str, value: object):
    used = replace(troubled.ticket, cut=replace(troubled.ticket.cut, wheel="used"))
    before = worked(used)
    after = changed(before, name)
    assert getattr(getattr(used, where), key) != value
    assert getattr(getattr(after, where), key) == value
    assert after.right == used.right
    # Done once, it has nothing left to do.
    again = changed(worked(after), name)
    assert again is None or name == "smaller bites"


def test_a_smaller_blank_is_the_smallest_usual_one_that_covers(troubled: EyeSheet):
    after = changed(troubled, "smaller blank")
    blank = after.right.lens.blank_diameter_mm
    assert blank % 5.0 == 0.0
    assert blank - 5.0 < troubled.minimum_blank_mm <= blank < troubled.order.lens.blank_diameter_mm


@pytest.mark.parametrize("name", ["other material", "flatter front", "steeper front"])
def test_what_changes_the_order_is_asked_first(troubled: EyeSheet, name: str):
    after = changed(troubled, name)
    assert remedies()[name].is_asked
    assert after.blocking == troubled.ticket.blocking
    assert after.right.prescription == troubled.order.prescription
    assert after.right.lens != troubled.order.lens


def test_a_higher_index_is_the_next_that_is_cut_like_plastics(troubled: EyeSheet):
    assert changed(troubled, "other material").right.lens.material.name == "episulfide-1.74"


def test_a_round_block_is_offered_only_where_it_clears():
    ticket = demo_ticket("hard-minus")
    shallow = replace(
        ticket,
        frame=replace(ticket.frame, b_mm=22.0),
        blocking=replace(ticket.blocking, block="half-eye"),
        right=replace(ticket.right, height_mm=None),
    )
    assert changed(worked(shallow), "round block") is None


def test_a_change_there_is_not_is_refused(troubled: EyeSheet):
    with pytest.raises(LabError, match="remedy 'more clamp' is not known: give one of clean lens"):
        changed(troubled, "more clamp")


def applied(sheet: EyeSheet, names: tuple[str, ...]) -> EyeSheet:
    for name in names:
        ticket = changed(sheet, name)
        sheet = sheet if ticket is None else worked(ticket)
    return sheet


def test_the_search_agrees_with_working_each_set_in_full(troubled: EyeSheet):
    own = [name for name in remedies() if changed(troubled, name) and not remedies()[name].is_asked]
    assert len(own) == 11
    draw = random.Random(7)
    for bound in (0.6, 0.1, 0.02):
        found = plan_remedies(troubled, bound=bound).cheapest
        assert applied(troubled, found.names).cut.margin == pytest.approx(found.margin, rel=1e-9)
        assert found.slip_probability <= bound
        for _ in range(8):
            names = tuple(name for name in own if draw.random() < 0.3)
            cost = sum(remedies()[name].cost for name in names)
            if cost < found.cost - 1e-9:
                margin = applied(troubled, names).cut.margin
                chance = slip_probability(margin, log_scatter(troubled.cut.bench, calibrated=False))
                assert chance > bound, (bound, names)


def test_the_search_agrees_with_brute_force():
    sheet = hard()
    own = [name for name in remedies() if changed(sheet, name) and not remedies()[name].is_asked]
    every = [tuple(name for i, name in enumerate(own) if chosen >> i & 1) for chosen in range(2 ** len(own))]
    margins = {names: applied(sheet, names).cut.margin for names in every}
    scatter = log_scatter(sheet.cut.bench, calibrated=False)
    for bound in (0.5, 0.2, 0.1, 0.05, 0.02):
        costs = [
            sum(remedies()[name].cost for name in names)
            for names, margin in margins.items()
            if slip_probability(margin, scatter) <= bound
        ]
        found = plan_remedies(sheet, bound=bound)
        assert found.cheapest.cost == pytest.approx(min(costs))
        assert margins[found.cheapest.names] == pytest.approx(found.cheapest.margin, rel=1e-9)
    lost = {
        names: sum(remedies()[name].cost for name in names)
        + slip_probability(margin, scatter) * spoiled_lens().cost
        for names, margin in margins.items()
    }
    assert found.best.expected_cost == pytest.approx(min(lost.values()))


def test_singles_are_ranked_and_are_what_each_gives_alone(troubled: EyeSheet, plan: RemedyPlan):
    assert [one.margin for one in plan.singles] == sorted((one.margin for one in plan.singles), reverse=True)
    for one in plan.singles:
        assert applied(troubled, one.names).cut.margin == pytest.approx(one.margin, rel=1e-9)
    assert plan.now.margin == pytest.approx(troubled.cut.margin, rel=1e-9)
    assert plan.now.cost == 0.0


def test_a_lens_that_holds_needs_nothing():
    found = plan_remedies(worked(demo_ticket("easy-minus")))
    assert found.cheapest.remedies == ()
    assert "nothing needs to be changed" in remedies_text(work(demo_ticket("easy-minus")))


def test_the_order_is_changed_only_where_the_bench_cannot_do_it(troubled: EyeSheet):
    reached = plan_remedies(troubled, bound=0.1)
    assert not reached.cheapest.is_asked
    own_best = min(plan_remedies(troubled, bound=1e-9).singles, key=lambda one: one.slip_probability)
    assert own_best.slip_probability > 1e-9
    assert plan_remedies(troubled, bound=1e-9).cheapest is None


def test_a_calibrated_bench_needs_less():
    before, after = (plan_remedies(hard(), calibrated=known) for known in (False, True))
    assert after.cheapest.cost < before.cheapest.cost
    assert after.now.margin == before.now.margin


@pytest.mark.parametrize("bound", [0.0, 1.2])
def test_a_bound_that_is_no_probability_is_refused(bound: float):
    with pytest.raises(LabError, match="bound"):
        plan_remedies(hard(), bound=bound)


def test_a_lens_with_no_cut_is_said_to_have_none():
    ticket = demo_ticket("to-be-held")
    text = remedies_text(work(ticket))
    assert "its cut is not known, so that nothing can be ranked: settle what is held" in " ".join(
        text.split()
    )
    assert "Bench figures" not in text


def test_the_command_prints_them_in_place_of_the_sheet(capsys: pytest.CaptureFixture[str]):
    assert main(["job", "hard-minus", "--remedies"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "Job sheet" not in said
    assert "Remedies for the right lens, each alone, the greatest margin first" in said
    assert "Cheapest set under the bound of 10 %: lay a film" in said
    assert "More clamp force is never among them" in said
    assert "Prices and minutes are those of an invented lab" in said
    assert "uncertain about threefold either way until this bench has been calibrated" in said


def test_no_line_is_too_long_for_a_page():
    for line in remedies_text(work(demo_ticket("hard-minus"))).splitlines():
        assert len(line) <= 96
