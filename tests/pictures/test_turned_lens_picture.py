"""One lens on its block: the block stands level, rim and marks have turned, what is short is told."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px
from turned_lenses import BUMPED, BURNT, HOLDS, LINE_OFF, NAMES, line_of, points_of, seen

from lablib.errors import LabError
from lablib.inspection.marks import turned_to_deg
from lablib.job.spoiled import spoiled
from lablib.optics.progressive import FITTING_CROSS, NASAL_ENGRAVING
from lablib.pictures.kept import KeptPicture
from lablib.pictures.turned_lens import TurnedLens
from lablib.pictures.turned_lens_data import (
    DESIGNS,
    FLAT_TOP,
    PROGRESSIVE,
    SINGLE_VISION,
    marks_of,
    usual_marks,
    written_turn,
)
from lablib.pictures.window import Window


class Alone(KeptPicture):
    """One lens and nothing else."""

    width_px = 400
    height_px = 360

    def build(self) -> None:
        self.lens = TurnedLens(Window(self, (2, 2, 398, 358), px_per_mm=4.6))

    def update(self, data) -> None:
        self.lens.update(data)


@pytest.fixture(scope="module")
def picture() -> Alone:
    return Alone()


@pytest.fixture(params=NAMES)
def drawn(request, picture):
    """A picture of a practice lens after its cut, what it was handed, and the simulation."""
    data = seen(request.param)
    picture.update(data)
    return picture.lens, data, spoiled(request.param).simulation


def direction_deg(ends: np.ndarray) -> float:
    return float(np.degrees(np.angle(ends[-1] - ends[0])))


@pytest.mark.parametrize(
    ("turned", "written"),
    [(0.0, "0.0°"), (9.94, "9.9°"), (9.96, "10°"), (-14.3, "14°"), (-0.62, "0.6°"), (1404.0, "1404°")],
)
def test_a_turn_is_written_without_its_sign_and_with_a_decimal_only_where_it_is_small(turned, written):
    assert written_turn(turned) == written


def test_the_block_stands_level_and_the_lens_is_turned_by_its_slip(drawn):
    lens, data, ran = drawn
    line = line_of(lens.block_line)

    assert line.imag == pytest.approx([0.0, 0.0])
    off = direction_deg(line_of(lens.line)) - direction_deg(data.marks.line)
    assert np.exp(1j * np.radians(off)) == pytest.approx(np.exp(1j * np.radians(ran.slip_deg)))
    assert data.line_deg == pytest.approx(turned_to_deg(ran.slip_deg))


def test_what_is_to_be_level_is_level_before_the_lens_turns(drawn):
    _, data, _ = drawn
    assert np.ptp(data.marks.line.imag) == pytest.approx(0.0, abs=1e-9)


def test_the_rim_is_that_of_the_simulation_and_the_outline_as_ordered(drawn):
    lens, _, ran = drawn
    rim, ordered = points_of(lens.rim), points_of(lens.ordered)

    assert np.abs(rim) == pytest.approx(ran.finished_mm[::2])
    assert np.abs(ordered) == pytest.approx(ran.result.lens.outline_mm[::2])
    assert points_of(lens.missing) == pytest.approx(ordered)
    assert lens.missing.get_zorder() < lens.rim.get_zorder() < lens.ordered.get_zorder()


def test_the_shape_of_the_block_is_drawn(drawn):
    lens, _, ran = drawn
    reach = np.abs(points_of(lens.block))
    contact = ran.result.holding.contact

    assert (reach.max(), reach.min()) == pytest.approx((contact.half_width_mm, contact.half_height_mm))


def test_a_patch_is_drawn_where_the_coat_was_burnt_and_nowhere_else(drawn):
    lens, data, ran = drawn
    burnt = "burnt patch" in ran.signs

    assert lens.patch.get_visible() == burnt
    assert data.patch_mm == pytest.approx(ran.heat.edge_mm if burnt else 0.0)
    if burnt:
        assert lens.patch.r == pytest.approx(ran.heat.edge_mm)


def test_turn_and_shortfall_are_written_where_they_show(drawn):
    lens, _, ran = drawn
    assert lens.turn.get_visible() == ("line off level" in ran.signs)
    assert lens.short.get_visible() == ("bumped outline" in ran.signs)
    if lens.turn.get_visible():
        assert lens.turn.get_text() == written_turn(turned_to_deg(ran.slip_deg))
    if lens.short.get_visible():
        assert lens.short.get_text() == f"{ran.shortfall_mm:.1f} mm short"


def test_words_keep_apart_and_inside_and_are_large_enough(drawn, picture):
    require_apart_and_inside(picture)
    assert smallest_px(picture) >= 12.0


def test_the_arc_runs_from_the_blocks_line_to_where_the_lens_stands(picture):
    picture.update(seen(BURNT))
    arc = line_of(picture.lens.arc)

    assert np.degrees(np.angle(arc[[0, -1]])) == pytest.approx([0.0, seen(BURNT).line_deg])
    assert np.degrees(np.angle(arc[-1])) < 0.0, "after whole turns it stands clockwise of the block"
    assert np.ptp(np.abs(arc)) == pytest.approx(0.0, abs=1e-9)


def test_nothing_is_told_where_it_is_not_to_be(picture):
    picture.lens.update(seen(BUMPED), told=False)
    told = (picture.lens.arc, picture.lens.arc_end, picture.lens.turn, picture.lens.short)
    assert not any(part.get_visible() for part in told)
    picture.lens.update(seen(BUMPED))
    assert all(part.get_visible() for part in told)


def test_the_bite_of_a_turn_is_drawn_only_where_a_turn_is_asked_for(picture):
    picture.update(seen(LINE_OFF))
    assert not picture.lens.before.get_visible()
    picture.update(seen(LINE_OFF, turn=2))
    assert picture.lens.before.get_visible()
    assert picture.lens.before.get_zorder() < picture.lens.rim.get_zorder()


def test_a_bite_lies_between_two_rims_of_the_lens_as_it_stands_now():
    data, ran = seen(LINE_OFF, turn=3), spoiled(LINE_OFF).simulation
    turn = np.exp(-1j * np.radians(ran.lag_deg[2, -1]))
    own = data.before * turn
    way = np.exp(2j * np.pi * np.arange(0, 720, 2) / 720)

    assert own == pytest.approx(ran.rim_mm[2][::2] * way)
    assert data.line_deg == pytest.approx(ran.lag_deg[2, -1])


def test_before_the_first_turn_lies_the_blank_with_nothing_short():
    data, ran = seen(LINE_OFF, turn=0), spoiled(LINE_OFF).simulation
    assert np.abs(data.rim) == pytest.approx(ran.rim_mm[0][::2])
    assert (data.line_deg, data.short_mm, data.patch_mm, data.before.size) == (0.0, 0.0, 0.0, 0)


def test_a_patch_shows_once_the_cut_is_over():
    runs = spoiled(BURNT).simulation.turns_run
    assert seen(BURNT, turn=runs - 1).patch_mm == 0.0
    assert seen(BURNT, turn=runs).patch_mm == seen(BURNT).patch_mm > 0.0


def test_a_turn_that_was_not_run_is_said():
    with pytest.raises(LabError, match=r"turn 99 was not run"):
        seen(HOLDS, turn=99)


def test_a_design_that_is_not_known_is_said():
    with pytest.raises(LabError, match=r"design 'round' is not known: give one of single vision, flat top"):
        usual_marks("round")


@pytest.mark.parametrize("design", DESIGNS)
def test_usual_marks_have_a_level_line_and_are_those_of_their_design(design):
    marks = usual_marks(design, centre=2.0 + 1.0j)
    assert marks.design == design
    assert np.ptp(marks.line.imag) == 0.0
    assert (marks.segment.size > 0) == (design == FLAT_TOP)
    assert marks.cross.size == (design == PROGRESSIVE)
    assert marks.dots.size == {SINGLE_VISION: 3, FLAT_TOP: 0, PROGRESSIVE: 2}[design]


def test_engravings_stand_34_mm_apart_with_the_cross_above_their_middle():
    marks = usual_marks(PROGRESSIVE)
    assert abs(marks.line[1] - marks.line[0]) == pytest.approx(34.0)
    assert (marks.cross[0] - marks.line.mean()).real == pytest.approx(0.0)
    assert (marks.cross[0] - marks.line.mean()).imag > 0.0


def test_the_line_of_a_flat_top_joins_the_corners_of_its_top():
    marks = usual_marks(FLAT_TOP)
    highest = marks.segment[np.isclose(marks.segment.imag, marks.segment.imag.max())]
    assert sorted(marks.line.real) == pytest.approx([highest.real.min(), highest.real.max()])


@pytest.mark.parametrize("name", ["holds", "loaded-progressive", "cribbed-flat-top"])
def test_marks_of_an_order_lie_where_they_were_laid_out(name):
    sheet = spoiled(name)
    marks, sign, layout = marks_of(sheet), sheet.eye.nasal_sign, sheet.multifocal
    chuck = complex(sheet.centre_x_mm, sheet.up_mm) - complex(
        sheet.cut.lens.blank_x_mm, sheet.cut.lens.blank_y_mm
    )
    if marks.design == PROGRESSIVE:
        found = [layout.mark(part) for part in (NASAL_ENGRAVING, FITTING_CROSS)]
        expected = [complex(sign * mark.in_mm, mark.up_mm) - chuck for mark in found]
        assert [marks.line[0], marks.cross[0]] == pytest.approx(expected)
    elif marks.design == FLAT_TOP:
        assert marks.segment == pytest.approx(layout.whole_ring_mm - chuck)
    else:
        assert marks.dots[1] == pytest.approx(complex(sheet.centre_x_mm, sheet.up_mm) - chuck)
