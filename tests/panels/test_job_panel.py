"""The job panel: what can be set, what it says, and tickets there and back."""

import re

import pytest
from on_screen import opened, rows, said
from stops import move_every_control

from lablib.bench.contact import block_words
from lablib.bench.machine import skin_names, wheel_names
from lablib.bench.parameter import parameters
from lablib.job.demo import demo_names, demo_path, demo_ticket
from lablib.job.figures import bench_dict, eye_dict
from lablib.job.sheet import work_file
from lablib.job.ticket import COATS
from lablib.panels.job_panel import JobPanel
from lablib.panels.lens_panel import LensPanel
from lablib.panels.panel import NOT_KNOWN

GLASS = {"material": "crown-glass-1.523", "bite_mm": 0.75, "eye": "left"}
CURED = {"crib_mm": 4.0, "film": "yes"}
WORST = {"skin": "oily", "wheel": "glazed", "block": "half-eye", "bite_mm": 3.0, "blank_diameter_mm": 85}


@pytest.fixture
def panel(tmp_path):
    return JobPanel(folder=tmp_path)


def test_it_has_the_lens_panels_controls_and_those_of_the_bench():
    lens, job = list(LensPanel.ranges), list(JobPanel.ranges)

    assert job == [*lens, "coat", "film", "crib_mm", "block", "bite_mm", "wheel", "skin"]
    assert {JobPanel.ranges[name].group for name in job[len(lens) :]} == {"Bench"}
    for name in lens:
        assert JobPanel.ranges[name].stops == LensPanel.ranges[name].stops


def test_sliders_of_the_bench_have_the_ranges_the_lessons_speak_of():
    crib, bite = (JobPanel.ranges[name] for name in ("crib_mm", "bite_mm"))

    assert (crib.low, crib.high, crib.step, crib.value) == (2, 25, 1, 25)
    assert (bite.low, bite.high, bite.step, bite.value) == (0.75, 3, 0.25, 2)


def test_choices_are_those_of_the_bench():
    options = {name: JobPanel.ranges[name].options for name in ("coat", "film", "block", "wheel", "skin")}

    assert options == {
        "coat": COATS,
        "film": ("no", "yes"),
        "block": tuple(block_words()),
        "wheel": wheel_names(),
        "skin": skin_names(),
    }


def test_ranges_lie_inside_what_the_bench_takes():
    crib = parameters()["crib_allowance_mm"]
    assert crib.low <= JobPanel.ranges["crib_mm"].low < JobPanel.ranges["crib_mm"].high <= crib.high
    for name, one in parameters().items():
        if name.endswith("depth_per_turn_mm"):
            assert one.low <= JobPanel.ranges["bite_mm"].low <= one.high, name


def test_it_starts_with_the_hard_job_of_the_demo_tickets(panel):
    order = demo_ticket("hard-minus").right
    sheet, demo = panel.at(), work_file(demo_path("hard-minus")).right

    assert sheet.order.lens == order.lens
    assert sheet.order.prescription == order.prescription
    assert bench_dict(sheet) == bench_dict(demo)
    assert sheet.cut.margin < 1.0


@pytest.mark.parametrize(
    "start",
    [
        {},
        CURED | {"eye": "left", "cylinder_d": -2.0, "axis_deg": 35},
        WORST,
        GLASS,
        {"sphere_d": 5.0, "front_curve_d": 7.0, "thickness_at": "thinnest edge", "thickness_mm": 1.0},
    ],
    ids=["hard job", "cribbed, film, left toric", "everything against it", "glass", "plus by its edge"],
)
def test_every_control_to_its_stops_and_back(tmp_path, start):
    seen = move_every_control(JobPanel(folder=tmp_path, **start))

    assert None in seen
    for words in set(seen) - {None}:
        assert re.search(r": (give|raise|take|check)|or give", words), f"no next step: {words}"


def test_the_numbers_are_those_of_the_job_sheet(panel, tmp_path):
    panel._tickets.save.click()
    sheet = work_file(tmp_path / "my-job.toml").right
    at, lens = bench_dict(sheet), eye_dict(sheet)

    assert rows(panel) == {
        "Margin": f"{at['margin']:.2f}",
        "Slip, now": f"{100 * at['slip_probability']:.0f} %",
        "Slip, calibrated": f"{100 * at['slip_probability_calibrated']:.0f} %",
        "Weakest joint": "pad to coat",
        "Front holds": f"{at['front_hold_nmm'] / 1000:.2f} N m",
        "Back tip adds": f"{at['back_hold_nmm'] / 1000:.2f} N m",
        "Greatest torque": f"{at['peak_cutting_torque_nmm'] / 1000:.2f} N m",
        "Greatest in turn": "1 lower nasal",
        "Greatest force": f"{at['peak_tangential_force_n']:.1f} N",
        "Greatest removal": f"{at['peak_removal_rate_mm3_per_s']:.0f} mm3/s",
        "Clamp force": f"{at['clamp_force_n']:.0f} N",
        "Thickest edge": f"{lens['edge_greatest_mm']:.2f} mm",
        "Least blank, exact": f"{lens['minimum_blank_mm']:.1f} mm",
        "Block clears": "yes 6.0 mm",
        "Crib margin": "not cribbed",
        "Axis may be off": "no axis",
    }


def test_numbers_of_a_cribbed_toric_lens(tmp_path):
    panel = JobPanel(folder=tmp_path, **CURED, cylinder_d=-2.0, b_mm=24.0, height_mm=12.0)
    shown = rows(panel)

    assert shown["Crib margin"] == f"{panel.at().cut.crib.margin:.2f}"
    assert shown["Weakest joint"] == "pad core"
    # Above 1.50 D of cylinder: ANSI Z80.1-2015, as in the axis limits of the inspection.
    assert shown["Axis may be off"] == "2 degrees"
    # Half of B is the round block's radius.
    assert shown["Block clears"] == "no 0.0 mm"


@pytest.mark.parametrize(
    ("start", "words"),
    [
        (
            {},
            "By the estimate the right lens turns on its block, margin {margin:.2f}: the weakest joint is "
            "pad to coat; in turn 1, lower nasal, the wheel asks {turn:.2f} against {hold:.2f} N m.",
        ),
        (
            CURED | {"eye": "left"},
            "By the estimate cribbing here holds, margin {crib:.2f}; then the left lens holds, margin "
            "{margin:.2f}: the weakest joint is pad core; in turn 1, temporal, the wheel asks {turn:.2f} "
            "against {hold:.2f} N m.",
        ),
        (
            {"crib_mm": 2.0},
            "By the estimate it turns while cribbed here, margin {crib:.2f}; cribbed elsewhere, the right "
            "lens holds, margin {margin:.2f}: the weakest joint is pad to coat; in turn 1, temporal, the "
            "wheel asks {turn:.2f} against {hold:.2f} N m.",
        ),
    ],
    ids=["turns", "cribbed, holds", "turns while cribbed"],
)
def test_the_sentence_says_whether_it_holds_and_why(tmp_path, start, words):
    panel = JobPanel(folder=tmp_path, **start)
    cut = panel.at().cut
    turn, hold = (float(part[cut.least.index]) / 1000 for part in (cut.cutting.torque_nmm, cut.hold_nmm))
    crib = cut.crib.margin if cut.crib else 0.0

    assert said(panel) == words.format(margin=cut.margin, turn=turn, hold=hold, crib=crib)
    assert hold / turn == pytest.approx(cut.margin)


def test_the_longest_sentence_is_short_enough(tmp_path):
    panel = JobPanel(
        folder=tmp_path,
        crib_mm=12.0,
        b_mm=24.0,
        height_mm=14.0,
        coat="uncoated",
        skin="oily",
        film="yes",
        cylinder_d=-4.0,
        axis_deg=140,
    )

    assert said(panel).endswith("Block stands out.")
    assert "film to lens; in turn 1, temporal," in said(panel)
    # A corner, such as "lower nasal", has one word more than a side.
    assert len(said(panel).split()) + 1 <= 45


def test_two_moves_cure_the_hard_job(panel):
    turned = said(panel)
    panel.handles["crib_mm"].slider.value = 3.0
    panel.handles["film"].box.value = "yes"

    assert "turns on its block" in turned
    assert "the right lens holds" in said(panel)
    # The reference job cribbed to 2 mm and with a film has a margin of 4.5; at 3 mm it is a little less.
    assert 2.5 < float(rows(panel)["Margin"]) < 4.5


def test_it_is_called_a_teaching_estimate_all_the_time(panel):
    def notes():
        return [
            part.value
            for part in panel.widget.children[2].children
            if "lab-note" in getattr(part, "value", "")
        ]

    before = notes()
    assert len(before) == 1
    assert "Teaching estimate: rankings and ratios are teachable" in before[0]
    assert "uncertain about threefold until this bench is calibrated" in before[0]
    panel.handles["blank_diameter_mm"].slider.value = 50
    assert panel.trouble
    assert notes() == before


def test_more_clamp_force_is_never_offered(tmp_path):
    for start in ({}, WORST, CURED):
        panel = JobPanel(folder=tmp_path, **start)
        assert not any("clamp" in spec.label.lower() for spec in panel.controls)
        assert "clamp" not in said(panel).lower()


def test_a_blank_that_does_not_reach_is_said_with_the_blank_to_take(tmp_path):
    panel = JobPanel(folder=tmp_path)
    before = panel.shown_png
    panel.handles["blank_diameter_mm"].slider.value = 53.0

    assert str(panel.trouble) == (
        "the 53 mm blank does not reach the whole outline, so this lens cannot be cut from it: take a "
        f"blank of {JobPanel(folder=tmp_path).at().minimum_blank_mm:.1f} mm or more, or a smaller frame"
    )
    assert panel.shown_png == b""
    assert set(rows(panel).values()) == {NOT_KNOWN}
    panel.handles["blank_diameter_mm"].slider.value = 72.0
    assert panel.trouble is None
    assert panel.shown_png == before


def test_a_bite_the_material_does_not_take_is_said_with_the_material(panel):
    panel.handles["material"].box.value = "crown-glass-1.523"

    assert str(panel.trouble) == (
        "crown glass 1.523: depth per turn 2 is out of range: give from 0.1 to 0.75 mm"
    )
    panel.handles["bite_mm"].slider.value = 0.75
    assert panel.trouble is None


def test_a_panel_with_two_controls_keeps_the_others_where_they_start(tmp_path):
    panel = JobPanel(folder=tmp_path, move=("blank_diameter_mm", "crib_mm"))
    panel.handles["crib_mm"].slider.value = 5.0

    assert panel.shown == ("blank_diameter_mm", "crib_mm")
    assert panel.values == JobPanel(folder=tmp_path).values | {"crib_mm": 5.0}
    assert panel.trouble is None


def test_the_far_end_of_the_crib_slider_is_not_cribbed(tmp_path):
    panel = JobPanel(folder=tmp_path)
    panel._tickets.save.click()
    assert "crib_allowance_mm" not in (tmp_path / "my-job.toml").read_text(encoding="utf-8")
    panel.handles["crib_mm"].slider.value = 24.0
    panel._tickets.name.value = "cribbed"
    panel._tickets.save.click()

    assert "crib_allowance_mm = 24.0" in (tmp_path / "cribbed.toml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "start",
    [
        {},
        CURED,
        GLASS,
        WORST | {"coat": "uncoated", "outline": "panto"},
        {"supply": "stock", "wheel": "loaded", "skin": "fingerprint", "coat": "coated", "crib_mm": 24.0},
    ],
    ids=["start", "cured", "glass", "worst", "stock"],
)
def test_saving_and_opening_gives_the_same_values(tmp_path, start):
    first = JobPanel(folder=tmp_path, **start)
    first._tickets.save.click()
    second = JobPanel(folder=tmp_path, eye="left", crib_mm=8.0)
    second._tickets.files.value = "my-job.toml"
    second._tickets.open.click()

    assert second.values == first.values
    assert second.shown_png == first.shown_png
    assert second._sentence.value == first._sentence.value


@pytest.mark.parametrize("name", ["hard-minus", "hard-minus-cribbed", "easy-minus"])
def test_demo_tickets_open_with_the_margin_of_their_job_sheet(panel, tmp_path, name):
    assert name in demo_names()
    words = opened(panel, tmp_path / "demo.toml", demo_path(name).read_text(encoding="utf-8"))
    expected = work_file(demo_path(name)).right.cut

    assert words.startswith("Opened demo.toml. This is the right eye.")
    assert not re.search("the (coat|blocking|cut)", words)
    assert rows(panel)["Margin"] == f"{expected.margin:.2f}"


TICKET = """
format = 1
number = "T-1"
[frame]
a_mm = 50.0
b_mm = 36.0
dbl_mm = 18.0
[right]
sphere_d = -4.0
monocular_pd_mm = 32.0
{right}
[lens]
material = "{material}"
front_curve_d = 4.0
centre_thickness_mm = 2.0
blank_diameter_mm = 70.0
{tail}
"""


def ticket(*, right: str = "", material: str = "hard-resin-1.50", tail: str = "") -> str:
    return TICKET.format(right=right, material=material, tail=tail)


def test_what_the_ticket_leaves_to_the_bench_is_set_as_the_bench_does_it(panel, tmp_path):
    assert opened(panel, tmp_path / "job.toml", ticket()) == "Opened job.toml. This is the right eye."
    bench = {name: panel.values[name] for name in list(JobPanel.ranges)[-7:]}

    assert bench == {
        "coat": "coated",
        "film": "no",
        "crib_mm": 25.0,
        "block": "round",
        "bite_mm": 2.0,
        "wheel": "sharp",
        "skin": "clean",
    }


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({"right": 'prism = [{ amount_prism_d = 1.0, base = "in" }]'}, "the prescribed prism"),
        ({"tail": '[blocking]\nblocking_point = "optical centre"'}, "blocking point 'optical centre'"),
        ({"tail": "[blocking]\nback_tape = true"}, "tape on the back"),
        ({"tail": "[blocking]\npad_age_months = 6.0"}, "a pad of 6 months"),
        ({"tail": "[blocking]\ntemperature_c = 18.0"}, "18 degrees C"),
        ({"tail": "[blocking]\nclamp_force_n = 250.0"}, "a clamp force of its own"),
        ({"tail": "[blocking]\nfilm_wrinkle = 0.2"}, "a crease in the film"),
        ({"tail": "[blocking]\nblock_curve_d = 6.0"}, "a block curve"),
        ({"tail": "[cut]\ncrib_allowance_mm = 25.0"}, "a crib allowance of 25 mm"),
        ({"tail": '[cut]\nfeed = "torque cap"'}, "another feed than depth"),
        ({"tail": "[cut]\nlens_speed_rpm = 6.0"}, "a lens speed of its own"),
        ({"tail": '[cut]\nwater = "dry"'}, "roughing wet or dry of its own"),
        (
            {"tail": "[blocking]\nback_tape = true\nclamp_force_n = 250.0"},
            "tape on the back, a clamp force of its own",
        ),
    ],
)
def test_what_changes_the_margin_and_has_no_control_is_refused(panel, tmp_path, parts, words):
    before = panel.values
    answer = opened(panel, tmp_path / "job.toml", ticket(**parts))

    assert answer.startswith(f"job.toml was not opened, and nothing was changed. The ticket asks for {words}")
    assert answer.endswith(
        ": this panel has no control for it and would show another margin; take it off the ticket, or print "
        "the job sheet instead"
    )
    assert panel.values == before


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        (
            {"material": "crown-glass-1.523"},
            "Bite per turn 0.25 mm is out of range here: give a value from 0.75",
        ),
        (
            {"tail": "[cut]\ncrib_allowance_mm = 2.5"},
            "Crib leaves 2.5 mm lies between two steps here: give 2 or 3",
        ),
        ({"tail": "[cut]\ncrib_allowance_mm = 1.0"}, "Crib leaves 1 mm is out of range here"),
        ({"tail": "[cut]\ndepth_per_turn_mm = 1.1"}, "Bite per turn 1.1 mm lies between two steps here"),
    ],
)
def test_values_off_a_controls_grid_are_refused(panel, tmp_path, parts, words):
    before = panel.values
    answer = opened(panel, tmp_path / "job.toml", ticket(**parts))

    assert f"nothing was changed. {words}" in answer
    assert panel.values == before


def test_a_material_given_by_its_numbers_is_refused(panel, tmp_path):
    text = ticket().replace('"hard-resin-1.50"', "{ index = 1.55, density = 1.2, abbe = 40.0 }")
    answer = opened(panel, tmp_path / "job.toml", text)

    assert "nothing was changed. Material " in answer
    assert "cannot be had here: give one of crown-glass-1.523" in answer


def test_a_held_prescription_is_refused(panel, tmp_path):
    text = ticket().replace("sphere_d = -4.0", 'prescription = "-3.00 -1.00"')

    assert "The prescription of the right eye is held: " in opened(panel, tmp_path / "job.toml", text)
