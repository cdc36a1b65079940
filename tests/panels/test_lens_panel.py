"""The lens panel: what can be set, what it says, and tickets there and back."""

import re

import pytest
from on_screen import opened, rows, said
from stops import move_every_control

from lablib.errors import LabError
from lablib.job.figures import eye_dict
from lablib.job.sheet import work_file
from lablib.job.ticket import SUPPLIES
from lablib.optics.frame import outline_families
from lablib.optics.limits import limit
from lablib.optics.material import materials
from lablib.panels.lens_panel import LensPanel
from lablib.panels.panel import NOT_KNOWN

PLUS = {"sphere_d": 5.0, "front_curve_d": 7.0, "thickness_at": "thinnest edge", "thickness_mm": 1.0}


@pytest.fixture
def panel(tmp_path):
    return LensPanel(folder=tmp_path)


def test_controls_have_the_ranges_the_lessons_speak_of():
    got = {
        name: (spec.low, spec.high, spec.step, spec.value)
        for name, spec in LensPanel.ranges.items()
        if hasattr(spec, "step")
    }

    assert got == {
        "sphere_d": (-12, 8, 0.25, -4),
        "cylinder_d": (-4, 4, 0.25, 0),
        "axis_deg": (1, 180, 1, 180),
        "front_curve_d": (0, 10, 0.25, 4),
        "thickness_mm": (0.8, 10, 0.1, 2),
        "blank_diameter_mm": (50, 85, 1, 70),
        "a_mm": (40, 62, 0.5, 50),
        "b_mm": (24, 50, 0.5, 36),
        "dbl_mm": (14, 24, 0.5, 18),
        "monocular_pd_mm": (26, 38, 0.5, 32),
        "height_mm": (6, 40, 0.25, 18),
    }


def test_choices_are_those_of_the_package():
    options = {name: spec.options for name, spec in LensPanel.ranges.items() if hasattr(spec, "options")}

    assert options == {
        "eye": ("right", "left"),
        "material": tuple(materials()),
        "thickness_at": ("centre", "thinnest edge"),
        "supply": SUPPLIES,
        "outline": ("superellipse 2.6", *outline_families()),
    }


@pytest.mark.parametrize(
    ("control", "quantities"),
    [
        (name, [name])
        for name in ("front_curve_d", "blank_diameter_mm", "a_mm", "b_mm", "dbl_mm", "monocular_pd_mm")
    ]
    + [("thickness_mm", ["centre_thickness_mm", "least_edge_mm"])],
)
def test_ranges_lie_inside_what_the_value_objects_take(control, quantities):
    spec = LensPanel.ranges[control]
    for quantity in quantities:
        low, high = limit(quantity)
        assert low <= spec.low < spec.high <= high


def test_controls_stand_in_three_groups_in_the_order_of_a_job():
    groups = list(dict.fromkeys(spec.group for spec in LensPanel.controls))

    assert groups == ["Prescription", "Lens", "Frame and wearer"]
    assert [spec.group for spec in LensPanel.controls] == sorted(
        (spec.group for spec in LensPanel.controls), key=groups.index
    )


@pytest.mark.parametrize(
    "start",
    [
        {},
        {"eye": "left", "cylinder_d": -2.0, "axis_deg": 35},
        PLUS,
        PLUS | {"supply": "stock", "eye": "left"},
        {"blank_diameter_mm": 50, "a_mm": 60.0, "outline": "pilot"},
    ],
    ids=["minus", "left toric", "plus by its edge", "plus from stock", "blank too small"],
)
def test_every_control_to_its_stops_and_back(tmp_path, start):
    seen = move_every_control(LensPanel(folder=tmp_path, **start))

    assert None in seen
    for words in set(seen) - {None}:
        assert re.search(r": (give|raise|take|check)|or give", words), f"no next step: {words}"


def test_the_numbers_are_those_of_the_job_sheet(panel, tmp_path):
    panel._tickets.save.click()
    sheet = work_file(tmp_path / "my-lens.toml").right
    at, shown = eye_dict(sheet), rows(panel)

    assert shown == {
        "Centre thickness": "2.00 mm",
        "Thickest": f"{at['edge_greatest_mm']:.2f} mm, temporal",
        "Thinnest": f"{at['edge_least_mm']:.2f} mm, top",
        "Edge, nasal": f"{at['edge_nasal_mm']:.2f} mm",
        "Edge, temporal": f"{at['edge_temporal_mm']:.2f} mm",
        "Edge, top": f"{at['edge_top_mm']:.2f} mm",
        "Edge, bottom": f"{at['edge_bottom_mm']:.2f} mm",
        "Back curve, base": f"{at['back_curve_base_d']:.2f} D",
        "Back curve, cross": f"{at['back_curve_cross_d']:.2f} D",
        "Weight, edged": f"{at['weight_g']:.1f} g",
        "Decentration across": "2.0 mm in",
        "Decentration upright": "0.0 mm up",
        "Least blank, exact": f"{at['minimum_blank_mm']:.1f} mm",
        "Least blank, by rule": f"{at['minimum_blank_rule_mm']:.1f} mm",
        "Blank covers": "yes",
    }


def test_directions_of_the_decentration_are_in_words(tmp_path):
    shown = rows(LensPanel(folder=tmp_path, monocular_pd_mm=36.0, height_mm=16.0))

    assert (shown["Decentration across"], shown["Decentration upright"]) == ("2.0 mm out", "2.0 mm down")


@pytest.mark.parametrize(
    ("start", "words"),
    [
        (
            {},
            "The right lens is thickest at its temporal edge, {greatest:.2f} mm, thinnest at its top edge, "
            "{least:.2f} mm, and 2.00 mm at its optical centre; the 70 mm blank covers it, "
            "{blank:.1f} mm being needed.",
        ),
        (
            PLUS | {"eye": "left", "blank_diameter_mm": 52},
            "The left lens is {centre:.2f} mm thick at its optical centre and thins to 1.00 mm at its "
            "temporal edge; the 52 mm blank is too small, {blank:.1f} mm being needed.",
        ),
        (
            {"sphere_d": 0.0, "front_curve_d": 0.0},
            "The right lens is 2.00 mm thick at its optical centre and 2.00 mm all round its edge; "
            "the 70 mm blank covers it, {blank:.1f} mm being needed.",
        ),
    ],
    ids=["minus", "plus", "flat"],
)
def test_the_sentence_says_what_the_picture_shows(tmp_path, start, words):
    panel = LensPanel(folder=tmp_path, **start)
    at = eye_dict(panel.at())
    figures = {"centre": at["centre_thickness_mm"], "blank": at["minimum_blank_mm"]}
    figures |= {"greatest": at["edge_greatest_mm"], "least": at["edge_least_mm"]}

    assert said(panel) == words.format(**figures)
    assert len(said(panel).split()) < 40


def test_the_longest_sentence_is_short_enough(tmp_path):
    panel = LensPanel(folder=tmp_path, eye="left", cylinder_d=-3.0, axis_deg=35, blank_diameter_mm=50)

    assert "lower temporal" in said(panel)
    assert len(said(panel).split()) < 40


def test_words_stand_in_the_pictures_place_and_a_good_move_brings_it_back(tmp_path):
    panel = LensPanel(folder=tmp_path, thickness_mm=1.0)
    before = panel.shown_png
    panel.handles["thickness_at"].box.value = "thinnest edge"

    assert "leaves no centre" in str(panel.trouble)
    assert panel.shown_png == b""
    assert set(rows(panel).values()) == {NOT_KNOWN}
    panel.handles["thickness_at"].box.value = "centre"
    assert panel.trouble is None
    assert panel.shown_png == before


def test_a_centre_in_a_corner_of_the_box_is_said(panel):
    panel.handles["height_mm"].slider.value = 36.0

    assert "lies outside the outline" in str(panel.trouble)


def test_a_panel_with_one_control_keeps_the_others_where_they_start(tmp_path):
    panel = LensPanel(folder=tmp_path, move=("front_curve_d",), sphere_d=-6.0)
    panel.handles["front_curve_d"].slider.value = 6.0

    assert panel.shown == ("front_curve_d",)
    assert panel.values == LensPanel(folder=tmp_path, sphere_d=-6.0).values | {"front_curve_d": 6.0}
    assert panel.trouble is None


@pytest.mark.parametrize(
    "start",
    [
        {},
        PLUS | {"supply": "stock", "eye": "left", "material": "thiourethane-1.60"},
        {"cylinder_d": -1.5, "axis_deg": 7, "outline": "panto", "height_mm": 20.5, "thickness_mm": 1.3},
    ],
    ids=["start", "stock", "panto"],
)
def test_saving_and_opening_gives_the_same_values(tmp_path, start):
    first = LensPanel(folder=tmp_path, **start)
    first._tickets.save.click()
    second = LensPanel(folder=tmp_path)
    second._tickets.files.value = "my-lens.toml"
    second._tickets.open.click()

    assert second.values == first.values
    assert second.shown_png == first.shown_png
    assert second._sentence.value == first._sentence.value


TICKET = """
format = 1
number = "T-1"
{top}
[frame]
a_mm = 52.0
b_mm = 34.0
dbl_mm = 18.0
{frame}
[right]
{right}
monocular_pd_mm = 31.0

[lens]
material = "hard-resin-1.50"
front_curve_d = 4.0
centre_thickness_mm = 2.0
blank_diameter_mm = 70.0
{lens}
{tail}
"""


def ticket(
    *, right: str = "sphere_d = -3.0", top: str = "", frame: str = "", lens: str = "", tail: str = ""
) -> str:
    return TICKET.format(right=right, top=top, frame=frame, lens=lens, tail=tail)


def test_an_opened_ticket_sets_every_control(panel, tmp_path):
    words = opened(
        panel, tmp_path / "job.toml", ticket(right="sphere_d = -3.0\ncylinder_d = -0.5\naxis_deg = 90")
    )

    assert words == "Opened job.toml. This is the right eye."
    assert panel.values == {
        "eye": "right",
        "sphere_d": -3.0,
        "cylinder_d": -0.5,
        "axis_deg": 90,
        "material": "hard-resin-1.50",
        "front_curve_d": 4.0,
        "thickness_at": "centre",
        "thickness_mm": 2.0,
        "supply": "surfaced",
        "blank_diameter_mm": 70.0,
        "outline": "superellipse 2.6",
        "a_mm": 52.0,
        "b_mm": 34.0,
        "dbl_mm": 18.0,
        "monocular_pd_mm": 31.0,
        "height_mm": 17.0,
    }


def test_what_the_panel_leaves_out_is_said(panel, tmp_path):
    whole = ticket(
        right='sphere_d = -3.0\naddition_d = 2.0\nprism = [{ amount_prism_d = 1.0, base = "in" }]',
        top='note = "urgent"',
        frame='kind = "metal"',
        lens='coat = "slick"',
        tail="[left]\nsphere_d = -2.0\nmonocular_pd_mm = 32.0\n"
        "[wearer]\nvertex_distance_mm = 13.0\n[blocking]\nfilm = true\n[cut]\ncrib_allowance_mm = 2.0",
    )

    assert opened(panel, tmp_path / "job.toml", whole) == (
        "Opened job.toml. This is the right eye. Left out here: the left eye, the prescribed prism, "
        "the addition, the coat, the kind of frame, the vertex distances, the blocking, the cut, the note."
    )


def test_a_segment_is_left_out_and_said(panel, tmp_path):
    whole = ticket(
        right="sphere_d = -3.0\nnear_pd_mm = 29.0\nsegment_height_mm = 15.0",
        lens='design = "flat top"\nsegment = "flat-top-28"',
    )

    assert opened(panel, tmp_path / "job.toml", whole) == (
        "Opened job.toml. This is the right eye. Left out here: the segment or progressive."
    )


def test_a_ticket_without_a_right_eye_shows_the_left(panel, tmp_path):
    text = ticket().replace("[right]", "[left]")

    assert opened(panel, tmp_path / "job.toml", text) == "Opened job.toml. This is the left eye."
    assert panel.values["eye"] == "left"


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({"right": 'prescription = "-3.00 -1.00"'}, "The prescription of the right eye is held: "),
        (
            {"right": "sphere_d = -14.0"},
            "Sphere -14 D is out of range here: give a value from -12.00 to +8.00 D",
        ),
        ({"right": "sphere_d = -3.1"}, "Sphere -3.1 D lies between two steps here: give -3.25 or -3.00"),
        (
            {"frame": 'outline = { family = "superellipse", exponent = 3.5 }'},
            "Outline 'superellipse 3.5' cannot be had here: give one of superellipse 2.6, round",
        ),
        ({"lens": "coat = 3"}, "coat = 3 is not text"),
    ],
    ids=["held", "out of range", "between steps", "outline", "unreadable"],
)
def test_what_cannot_be_shown_is_refused_and_nothing_moves(panel, tmp_path, parts, words):
    before = panel.values, panel.shown_png
    answer = opened(panel, tmp_path / "job.toml", ticket(**parts))

    assert answer.startswith("job.toml was not opened, and nothing was changed. ")
    assert words in answer
    assert (panel.values, panel.shown_png) == before


def test_a_material_by_its_numbers_is_refused(panel, tmp_path):
    text = ticket().replace('"hard-resin-1.50"', "{ index = 1.56, density = 1.2 }")

    assert "Material 'by its numbers' cannot be had here" in opened(panel, tmp_path / "job.toml", text)


def test_a_curve_by_the_lens_measure_is_turned_into_the_materials_own(panel, tmp_path):
    # 1.53 is the index the lens measure is engraved for: what it shows is the curve.
    text = ticket().replace("hard-resin-1.50", "urethane-1.53")
    text = text.replace("front_curve_d = 4.0", "front_curve_measured_d = 5.25")
    opened(panel, tmp_path / "job.toml", text)

    assert panel.values["front_curve_d"] == 5.25


def test_saving_in_trouble_saves_nothing(panel, tmp_path):
    panel.handles["height_mm"].slider.value = 40.0
    panel._tickets.save.click()

    assert "Nothing was saved." in panel._tickets.status.value
    assert not list(tmp_path.glob("*.toml"))


def test_the_panel_of_an_impossible_start_shows_words(tmp_path):
    panel = LensPanel(folder=tmp_path, sphere_d=-12.0, front_curve_d=10.0, a_mm=62.0)

    assert "does not reach" in str(panel.trouble)
    with pytest.raises(LabError, match=r"Sphere -12\.1 D is out of range here"):
        LensPanel(folder=tmp_path, sphere_d=-12.1)
