"""Practice lenses: what the simulation makes of each, what would have helped, and what would not."""

from dataclasses import replace

import pytest

from lablib.bench.margin import work_cut
from lablib.bench.signs import BUMPED_OUTLINE, BURNT_PATCH, LINE_OFF_LEVEL, NONE
from lablib.bench.slipping import simulate
from lablib.datafile import read_table, require_grade
from lablib.errors import LabError
from lablib.job.multifocal_order import DESIGNS
from lablib.job.spoiled import (
    changed_ticket,
    changes,
    cures,
    does_something,
    holds,
    side_by_side,
    spoiled,
    spoiled_job,
    spoiled_names,
)

each_lens = pytest.mark.parametrize("name", spoiled_names())
SIGNS = {
    "holds": NONE,
    "line-off": LINE_OFF_LEVEL,
    "bumped": BUMPED_OUTLINE,
    "burnt": BURNT_PATCH,
    "loaded-progressive": LINE_OFF_LEVEL,
    "oily-minus": LINE_OFF_LEVEL,
    "half-eye-block": LINE_OFF_LEVEL,
    "old-pad": LINE_OFF_LEVEL,
    "cribbed-flat-top": LINE_OFF_LEVEL,
    "oily-low-minus": BUMPED_OUTLINE,
    "loaded-flat-top": BUMPED_OUTLINE,
    "oily-old-minus": BUMPED_OUTLINE,
    "used-flat-top": BUMPED_OUTLINE,
    "glazed-progressive": BURNT_PATCH,
    "glazed-half-eye": BURNT_PATCH,
    "oily-old-strong-minus": BURNT_PATCH,
    "filmed-minus": NONE,
    "easy-progressive": NONE,
    "printed-flat-top": NONE,
}
each_spoiled = pytest.mark.parametrize("name", [name for name, sign in SIGNS.items() if sign != NONE])


def useless(name: str) -> set[str]:
    """The single changes by which a practice lens shows a sign all the same."""
    return {change for change in changes() if spoiled(name, change).simulation.signs}


def test_there_are_enough_of_each_sign():
    assert tuple(SIGNS) == spoiled_names()
    assert len(SIGNS) >= 16
    assert [SIGNS[name] for name in side_by_side()] == [NONE, LINE_OFF_LEVEL, BUMPED_OUTLINE, BURNT_PATCH]
    assert all(list(SIGNS.values()).count(sign) >= 3 for sign in set(SIGNS.values()))


@each_lens
def test_the_simulation_gives_the_sign(name: str):
    assert spoiled(name).simulation.sign == SIGNS[name]


@pytest.mark.parametrize(
    ("name", "margin", "slip", "short", "rise"),
    # Simulation vectors of the slip model; the tickets have exact lenses in place of its thin-lens sagittae.
    [
        ("holds", 2.784, 0.0, 0.0, 0.0),
        ("line-off", 0.930, 14.2, 0.0, 0.6),
        ("bumped", 0.645, 11.5, 0.605, 0.5),
        ("burnt", 0.372, 1395.0, 2.5, 30.0),
    ],
)
def test_the_four_side_by_side_are_the_vectors(
    name: str, margin: float, slip: float, short: float, rise: float
):
    ran = spoiled(name).simulation
    assert ran.result.margin == pytest.approx(margin, rel=0.02)
    assert ran.slip_deg == pytest.approx(slip, rel=0.02)
    assert ran.shortfall_mm == pytest.approx(short, abs=0.05)
    assert ran.rise_k == pytest.approx(rise, abs=1.0)


@each_lens
@pytest.mark.parametrize("factor", [0.995, 1.005])
def test_no_sign_hangs_on_a_last_figure(name: str, factor: float):
    # Degrees are not predicted, but which sign a lens shows must not turn on half a percent.
    cut = spoiled(name).cut
    energy = cut.material.specific_energy_j_per_mm3 * factor
    material = replace(cut.material, specific_energy_j_per_mm3=energy)
    assert simulate(work_cut(cut.lens, material=material, setup=cut.setup)).sign == SIGNS[name]


@each_spoiled
def test_something_cures_it_and_something_does_not(name: str):
    assert cures(name)
    assert useless(name)
    assert not set(cures(name)) & useless(name)
    assert all(spoiled(name, change).simulation.slip_deg == 0.0 for change in cures(name))
    assert not holds(name)


def test_each_change_cures_one_lens_and_leaves_another_spoiled():
    spoiled_ones = [name for name, sign in SIGNS.items() if sign != NONE]
    for change in changes():
        assert any(change in cures(name) for name in spoiled_ones), change
        tried = [name for name in spoiled_ones if does_something(name, change)]
        # Cribbing alone always helped here, as it did over random jobs.
        assert change == "crib" or any(change in useless(name) for name in spoiled_ones), (change, tried)


@each_lens
def test_no_change_lowers_the_margin_of_a_coated_lens(name: str):
    # On a lens without a coat a film would: its joint is weaker than the pad's on bare resin.
    for change in changes():
        assert spoiled(name, change).cut.margin >= spoiled(name).cut.margin * 0.999, change


@each_lens
def test_what_was_wrong_is_told_of_every_lens_that_turned(name: str):
    job = spoiled_job(name)
    assert job.wrong or holds(name)
    # What a word of it blames can be put right by the change that is about it.
    for word, change in (("oil", "clean-lens"), ("wheel", "dressed-wheel"), ("pad", "fresh-pad")):
        assert any(word in text for text in job.wrong) <= does_something(name, change), (word, change)
    assert (job.words, *job.wrong) == tuple(text.strip() for text in (job.words, *job.wrong))


@each_lens
def test_each_is_one_lens_that_can_be_made(name: str):
    sheet = spoiled(name)
    assert len(sheet.ticket.eyes) == 1
    assert sheet.blank_covers
    assert sheet.cut.block_clears
    assert sheet.order.lens.design in DESIGNS
    assert (sheet.multifocal is None) == (sheet.order.lens.design == "single vision")
    assert sheet.simulation.leads == 0


def test_the_signs_are_seen_on_every_design_that_marks_them():
    seen = {(spoiled(name).order.lens.design, sign) for name, sign in SIGNS.items()}
    for design in ("single vision", "flat top", "progressive"):
        assert (design, LINE_OFF_LEVEL) in seen
        assert (design, BURNT_PATCH) in seen


def test_a_lens_is_worked_once():
    assert spoiled("holds") is spoiled("holds")
    assert spoiled("holds", "clean-lens") is spoiled("holds")
    assert spoiled("holds", "film") is spoiled("holds", "film")
    assert spoiled("holds", "film") is not spoiled("holds")


def test_a_change_changes_one_thing():
    for change in changes().values():
        for name in spoiled_names():
            before, after = spoiled_job(name).ticket, changed_ticket(name, change.name)
            part = replace(
                getattr(after, change.part), **{change.key: getattr(getattr(before, change.part), change.key)}
            )
            assert replace(after, **{change.part: part}) == before


def test_clamp_force_is_no_change():
    assert not any("clamp" in change.key or "clamp" in change.words for change in changes().values())


def test_names_that_are_not_there():
    with pytest.raises(LabError, match="practice lens 'none' is not known: give one of holds, line-off"):
        spoiled("none")
    with pytest.raises(LabError, match="change 'clamp' is not known: give one of clean-lens"):
        spoiled("holds", "clamp")


def test_the_table_says_where_it_comes_from():
    table = read_table("lablib.job", "spoiled_lenses.toml")
    assert table["source"].startswith("invented")
    assert require_grade("practice lenses", table["grade"]) == "teaching estimate"
