"""Multifocal tickets: read, written, laid out, held and found; the two with traps among them."""

import tomllib

import pytest
from evaluation import assert_comes_out
from tickets import FRAME, LENS, ticket, ticket_path

from lablib.errors import LabError
from lablib.job.explain import explain_eye
from lablib.job.fields import TicketFaults
from lablib.job.figures import as_dict
from lablib.job.multifocal_order import SegmentOrder
from lablib.job.report import as_text
from lablib.job.sheet import JobSheet, work
from lablib.job.ticket import LensOrder, Ticket
from lablib.job.ticket_file import ticket_from
from lablib.job.ticket_writing import ticket_text
from lablib.optics.material import material
from lablib.optics.progressive import ProgressiveDesign, progressive
from lablib.optics.segment import segment

FLAT = LENS | {"design": "flat top", "segment": "flat-top-28"}
ON_BLANK = FLAT | {"blank_segment_inset_mm": 3.0, "blank_segment_drop_mm": 5.0}
GENERAL = LENS | {"design": "progressive", "chart": "general"}
OWN_CHART = {
    "engraving_below_cross_mm": 2.0,
    "distance_circle_above_cross_mm": 5.0,
    "near_circle_below_cross_mm": 11.0,
    "near_inset_mm": 2.0,
    "least_fitting_height_mm": 15.0,
}
# A 54 DBL 18, 32 and 30; top 18 on B 38: common practice.
SEGMENT_FRAME = FRAME | {"a_mm": 54.0, "b_mm": 38.0, "dbl_mm": 18.0}


def reader(**more: object) -> dict:
    """Return an eye that reads through a segment."""
    eye = {"sphere_d": -1.0, "addition_d": 2.0, "monocular_pd_mm": 32.0, "near_pd_mm": 30.0}
    return eye | {"segment_height_mm": 18.0} | more


def wearer(**more: object) -> dict:
    """Return an eye that wears a progressive."""
    return {"sphere_d": -1.5, "addition_d": 2.0, "monocular_pd_mm": 31.0, "height_mm": 20.0} | more


def bifocals(
    lens: dict = FLAT, right: dict | None = None, left: dict | None = None, **more: object
) -> Ticket:
    parts = {"frame": SEGMENT_FRAME, "right": right or reader(), "left": left or reader(), "lens": lens}
    return ticket(**parts | more)


def progressives(right: dict | None = None, left: dict | None = None, **more: object) -> Ticket:
    parts = {"frame": FRAME | {"b_mm": 34.0}, "right": right or wearer(), "left": left or wearer()}
    return ticket(**{"lens": GENERAL} | parts | more)


def found(whole: Ticket) -> set[str]:
    return {finding.name for finding in work(whole).findings}


def held(sheet: JobSheet) -> list[str]:
    return [hold.name for hold in sheet.holds]


# --- Read and written --------------------------------------------------------------------------------------


def test_a_flat_top_is_read():
    order = bifocals(ON_BLANK).right
    assert order.lens.multifocal == SegmentOrder(
        segment=segment("flat-top-28"), blank_inset_mm=3.0, blank_drop_mm=5.0
    )
    assert (order.near_pd_mm, order.segment_height_mm) == (30.0, 18.0)


@pytest.mark.parametrize(
    ("keys", "name"),
    [
        ({"segment_width_mm": 28.0}, "flat-top-28"),
        (
            {
                "segment_width_mm": 28.0,
                "segment_depth_mm": 19.0,
                "segment_centre_below_top_mm": 5.0,
            },
            "flat-top-28",
        ),
        ({"design": "round segment", "segment_width_mm": 24.0}, "round-24"),
        ({"design": "curved top", "segment": "curved-top-28"}, "curved-top-28"),
    ],
)
def test_a_segment_is_named_or_described(keys: dict, name: str):
    lens = LENS | {"design": "flat top"} | keys
    assert bifocals(lens).left.lens.multifocal.segment == segment(name)


def test_a_progressive_is_named_or_described():
    assert progressives().right.lens.multifocal == progressive("general")
    own = progressives(lens=LENS | {"design": "progressive"} | OWN_CHART | {"addition_on": "back"})
    assert own.right.lens.multifocal == ProgressiveDesign(**OWN_CHART, addition_on="back")


@pytest.mark.parametrize(
    "lens",
    [
        ON_BLANK,
        LENS | {"design": "curved top", "segment_width_mm": 25.0},
        LENS
        | {
            "design": "flat top",
            "segment_width_mm": 30.0,
            "segment_depth_mm": 20.0,
            "segment_centre_below_top_mm": 5.0,
        },
    ],
)
def test_what_is_written_of_a_bifocal_reads_back(lens: dict):
    whole = bifocals(lens)
    assert ticket_from(tomllib.loads(ticket_text(whole))) == whole


@pytest.mark.parametrize("lens", [GENERAL, LENS | {"design": "progressive"} | OWN_CHART])
def test_what_is_written_of_a_progressive_reads_back(lens: dict):
    whole = progressives(lens=lens)
    assert ticket_from(tomllib.loads(ticket_text(whole))) == whole


@pytest.mark.parametrize(
    ("lens", "right", "line"),
    [
        (
            LENS | {"design": "flat top"},
            {},
            "[lens] design = 'flat top' without its segment: give segment = a name of the table, or "
            "segment_width_mm with segment_depth_mm and segment_centre_below_top_mm",
        ),
        (
            LENS | {"design": "bifocal"},
            {},
            "[lens] design 'bifocal' is not known: give one of single vision, flat top, round segment, "
            "curved top, progressive",
        ),
        (LENS | {"design": 28.0}, {}, "[lens] design = 28.0 is not text: put it in quotes"),
        (FLAT | {"segment": 28}, {}, "[lens] segment = 28 is not text: put it in quotes"),
        (GENERAL | {"chart": 1}, wearer(), "[lens] chart = 1 is not text: put it in quotes"),
        (
            FLAT | {"segment_width_mm": 28.0},
            {},
            "[lens] segment = 'flat-top-28' and sizes of its own are both there: give one of the two",
        ),
        (
            FLAT | {"segment": "round-22"},
            {},
            "[lens] design 'flat top' with a segment of the style round segment: give the lens what its "
            "design needs, and no more",
        ),
        (
            FLAT | {"blank_segment_drop_mm": 5.0},
            {},
            "[lens] blank_segment_inset_mm and blank_segment_drop_mm: one of the two is missing: give both "
            "as the blank's chart has them, or neither",
        ),
        (
            ON_BLANK | {"blank_segment_inset_mm": 20.0},
            {},
            "[lens] blank_segment_inset_mm 20 is out of range: give from 0 to 10 mm",
        ),
        (
            GENERAL | {"near_inset_mm": 2.0},
            wearer(),
            "[lens] chart = 'general' and numbers of its own are both there: give one of the two",
        ),
        (
            LENS | {"design": "progressive", "engraving_below_cross_mm": 4.0},
            wearer(),
            "[lens] design = 'progressive' without distance_circle_above_cross_mm: give it as the maker's "
            "chart has it, or chart = one of general, short",
        ),
        (
            FLAT,
            reader(near_pd_mm=34.0),
            "[right] near distance 34 mm is larger than the far one, 32 mm: eyes turn inwards to read; check "
            "whether the two are exchanged",
        ),
        (
            FLAT,
            reader(segment_height_mm=2.0),
            "[right] segment_height_mm 2 is out of range: give from 4 to 45 mm",
        ),
        (
            LENS,
            reader(),
            "[right] near_pd_mm 30 on a single vision lens: only a lens with a segment has it: take it off, "
            "or give the design",
        ),
        (
            GENERAL,
            wearer(segment_height_mm=18.0),
            "[right] segment_height_mm 18 on a progressive lens: only a lens with a segment has it: take it "
            "off, or give the design",
        ),
    ],
)
def test_a_multifocal_that_cannot_be_is_a_fault(lens: dict, right: dict, line: str, tmp_path):
    parts = {"frame": SEGMENT_FRAME, "lens": lens, "right": right or reader(), "left": None}
    with pytest.raises(TicketFaults) as caught:
        Ticket.read(ticket_path(tmp_path, **parts))
    assert caught.value.faults == (f"ticket.toml: {line}",)


def test_a_key_of_another_design_is_unknown(tmp_path):
    with pytest.raises(TicketFaults, match=r"\[lens\] chart = 'general': unknown key: give one of "):
        bifocals(FLAT | {"chart": "general"})
    with pytest.raises(TicketFaults, match=r"\[lens\] segment = 'flat-top-28': unknown key: give one of "):
        ticket(lens=LENS | {"segment": "flat-top-28"})


@pytest.mark.parametrize(
    ("design", "having"),
    [
        ("flat top", "design 'flat top' with no segment and no chart: "),
        ("progressive", "design 'progressive' with no segment and no chart: "),
    ],
)
def test_a_lens_without_what_its_design_needs(design: str, having: str):
    rest = {"material": material("hard-resin-1.50"), "front_curve_d": 4.0, "centre_thickness_mm": 2.0}
    with pytest.raises(LabError) as caught:
        LensOrder(design=design, blank_diameter_mm=70.0, **rest)
    assert str(caught.value) == f"{having}give the lens what its design needs, and no more"
    with pytest.raises(LabError, match="design 'single vision' with a progressive chart: "):
        LensOrder(blank_diameter_mm=70.0, multifocal=ProgressiveDesign(), **rest)


def test_a_top_outside_the_frame_is_a_fault_of_its_eye():
    with pytest.raises(TicketFaults) as caught:
        work(bifocals(left=reader(segment_height_mm=40.0)))
    assert caught.value.faults == (
        "[left] segment_height_mm 40 is out of range: give above 0 and up to 38 mm above the lowest tangent, "
        "inside B",
    )


# --- Laid out ----------------------------------------------------------------------------------------------


def test_a_flat_top_is_laid_out_on_the_sheet():
    sheet = work(bifocals(ON_BLANK))
    figures = as_dict(sheet)["right"]["multifocal"]
    assert figures["design"] == "flat top"
    assert (figures["segment_inset_mm"], figures["total_inset_mm"]) == (2.0, 6.0)
    assert (figures["segment_top_up_mm"], figures["segment_top_below_centre_mm"]) == (-1.0, 1.0)
    # Bhootra, Ophthalmic Lenses, p. 114: add 2.00, centre 5 mm below the top.
    assert figures["image_jump_prism_d"] == 1.0
    assert figures["segment_blank_covers"] is True
    text = as_text(sheet)
    assert "6.0 mm in (inset 2.0)" in text
    assert "1.0 mm below midline" in text
    assert "1.00 prism D base down" in text
    assert held(sheet) == []


def test_a_progressive_is_laid_out_on_the_sheet():
    """Brooks, Essentials of Ophthalmic Lens Finishing, 2nd ed., p. 400."""
    frame = FRAME | {"a_mm": 49.0, "b_mm": 34.0, "dbl_mm": 21.0}
    right, left = wearer(monocular_pd_mm=31.5), wearer(monocular_pd_mm=30.5, height_mm=21.0)
    sheet = work(progressives(right, left, frame=frame))
    found_right, found_left = (as_dict(sheet)[eye]["multifocal"] for eye in ("right", "left"))
    assert (found_right["cross_in_mm"], found_left["cross_in_mm"]) == (3.5, 4.5)
    assert (found_right["cross_up_mm"], found_left["cross_up_mm"]) == (3.0, 4.0)
    assert (found_right["nasal_engraving_up_mm"], found_left["nasal_engraving_up_mm"]) == (-1.0, 0.0)
    assert found_right["nasal_engraving_in_mm"] - found_right["temporal_engraving_in_mm"] == 34.0
    text = as_text(sheet)
    assert "3.5 mm in, 3.0 mm above midline" in text
    assert "20.5 mm in and 13.5 mm out" in text
    level = next(line for line in text.splitlines() if line.startswith("Engravings, level"))
    assert level.split("  ")[-1].strip() == "on the midline"
    assert held(sheet) == []


def test_a_single_vision_sheet_says_nothing_of_segments():
    sheet = work(ticket())
    assert "multifocal" not in as_dict(sheet)["right"]
    assert "Segment" not in as_text(sheet)


def test_the_sheet_says_whether_the_blank_carries_its_segment():
    text = as_text(work(bifocals(ON_BLANK | {"blank_diameter_mm": 56.0})))
    row = next(line for line in text.splitlines() if line.startswith("Blank, by its segment"))
    assert row.count("does NOT cover") == 2
    assert "its inset and drop not given" in as_text(work(bifocals()))


def test_the_least_blanks_about_two_centres_have_names_of_their_own():
    steps = [step for step in explain_eye(work(bifocals(ON_BLANK)).eyes[0]) if "blank" in step.what]
    assert len({step.symbol for step in steps}) == len(steps)
    (carried,) = (step for step in steps if step.symbol == "D_s")
    assert carried.terms[0].meaning == "farthest outline point, across from the blank's centre"


def test_one_eye_may_be_single_vision():
    plain = {"sphere_d": -1.0, "monocular_pd_mm": 32.0, "lens": LENS | {"design": "single vision"}}
    own = {"frame": SEGMENT_FRAME, "right": reader() | {"lens": FLAT}, "left": plain, "lens": {}}
    text = as_text(work(ticket(**own)))
    design = next(line for line in text.splitlines() if line.startswith("Design"))
    assert design.split("  ")[-1] == "single vision"


@pytest.mark.parametrize("order", [bifocals(ON_BLANK), bifocals(), progressives()])
def test_every_working_of_a_multifocal_comes_out(order: Ticket):
    for eye in work(order).eyes:
        steps = explain_eye(eye)
        assert {"J", "g_up"} & {step.symbol for step in steps}
        for step in steps:
            assert_comes_out(step)


# --- Held --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("missing", "name", "words"),
    [
        ("near_pd_mm", "near-distance-missing", "It is measured, never guessed."),
        ("segment_height_mm", "segment-height-missing", "at what height does the top of the segment stand?"),
        ("addition_d", "addition-missing", "A flat top without an addition"),
    ],
)
def test_a_bifocal_waits_for_what_is_missing(missing: str, name: str, words: str):
    eye = {key: value for key, value in reader().items() if key != missing}
    sheet = work(bifocals(right=eye, left=eye))
    assert held(sheet) == [name, name]
    assert words in sheet.holds[0].question
    row = next(line for line in as_text(sheet).splitlines() if line.startswith("Image jump"))
    assert row.count("held") == 2


def test_a_progressive_waits_for_its_height():
    eye = {key: value for key, value in wearer().items() if key != "height_mm"}
    sheet = work(progressives(eye, eye))
    assert held(sheet) == ["fitting-height-missing"] * 2
    assert "at what height does the fitting cross stand?" in sheet.holds[0].question


@pytest.mark.parametrize("height_mm", [3.0, 50.0])
def test_a_cross_may_stand_where_no_segment_does(height_mm: float):
    """The sheet holds or finds; the height of a cross has other limits than the top of a segment."""
    frame = FRAME | {"a_mm": 54.0, "b_mm": 62.0}
    sheet = work(progressives(wearer(height_mm=height_mm), wearer(height_mm=height_mm), frame=frame))
    assert held(sheet) == (["height-below-least-fitting"] * 2 if height_mm < 18.0 else [])


def test_a_millimetre_of_height_is_a_millimetre_and_room_enough_is_enough():
    """16.1 less 15.1, and 10 less what is left of 33.3 above 23.3: the last bit decides nothing."""
    frame, lens = FRAME | {"b_mm": 33.3}, GENERAL | {"chart": "short"}
    sheet = work(progressives(wearer(height_mm=16.1), wearer(height_mm=15.1), frame=frame, lens=lens))
    assert held(sheet) == []
    high = wearer(height_mm=23.3)
    assert "little-room-above-the-cross" not in found(progressives(high, high, frame=frame))


def test_a_cross_below_the_least_fitting_height_is_held():
    """Ticket 9 of the lessons' own."""
    frame = FRAME | {"a_mm": 50.0, "b_mm": 28.0, "dbl_mm": 18.0}
    sheet = work(progressives(wearer(height_mm=15.0), wearer(height_mm=15.0), frame=frame))
    assert held(sheet) == ["height-below-least-fitting"] * 2
    assert "15 mm high and this design needs 18 mm" in sheet.holds[0].question


def test_a_large_imbalance_at_near_is_asked_about():
    """Ticket 10 of the lessons' own: R -1.00, L -4.50, 3.5 imbalance 10 mm below the centres."""
    sheet = work(bifocals(left=reader(sphere_d=-4.5)))
    assert held(sheet) == ["near-imbalance"]
    assert "3.50 prism dioptres" in sheet.holds[0].question
    assert "base up on the left lens" in sheet.holds[0].question
    assert held(work(bifocals(left=reader(sphere_d=-4.5), note="no slab-off, asked"))) == []
    assert held(work(bifocals(left=reader(sphere_d=-2.25)))) == []


def test_heights_that_differ_are_asked_about():
    assert held(work(bifocals(left=reader(segment_height_mm=16.0)))) == ["heights-differ"]
    assert held(work(bifocals(left=reader(segment_height_mm=17.0)))) == []
    assert held(work(progressives(left=wearer(height_mm=22.0)))) == ["heights-differ"]


# --- Found -------------------------------------------------------------------------------------------------


def test_what_the_bench_should_know_of_a_bifocal():
    assert "distance-part-alone" in found(bifocals())
    assert "addition-not-in-the-lens" not in found(bifocals())
    high = bifocals(right=reader(segment_height_mm=20.0), left=reader(segment_height_mm=20.0))
    assert "top-above-distance-centre" in found(high)
    small = bifocals(ON_BLANK | {"blank_diameter_mm": 60.0})
    assert "blank-does-not-carry-segment" in found(small)
    # Where the segment's place is known, it decides and not the distance centre.
    assert "blank-does-not-cover" not in found(small)


def test_what_the_bench_should_know_of_a_progressive():
    frame = FRAME | {"b_mm": 28.0}
    assert "little-room-above-the-cross" in found(progressives(frame=frame))
    assert "little-room-above-the-cross" not in found(progressives())
