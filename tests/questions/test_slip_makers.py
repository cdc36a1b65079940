"""Makers on slip: the trade's own examples to the printed digit, and what the pictures and data hold."""

import pytest
from made_questions import SEEDS, answered, questions

from lablib.bench.machine import Bench
from lablib.bench.signs import BUMPED_OUTLINE, BURNT_PATCH, LINE_OFF_LEVEL, NONE
from lablib.datafile import read_table, require_grade
from lablib.inspection.wrong_axis import BEFORE, MACHINE, RIM, SLIP
from lablib.job.spoiled import changes, spoiled, spoiled_names
from lablib.optics.prescription import Prescription
from lablib.optics.segment import segment
from lablib.pictures.asked_spoiled import SpoiledLens
from lablib.questions import slip
from lablib.questions.slip.chance import ChanceCase
from lablib.questions.slip.gains import GainsCase
from lablib.questions.slip.left_over import LeftOverCase
from lablib.questions.slip.margin import TurnsCase
from lablib.questions.slip.marks import MarksCase, TopCase
from lablib.questions.slip.pictured import drawing_of, setup_sentences
from lablib.questions.slip.remedy import BOUND, kinds_of
from lablib.questions.slip.told import against_slip, lenses, on_a_sphere, spoiled_on
from lablib.questions.slip.turned_prism import TurnedSphereCase

MAKERS = {maker.name: maker for maker in slip.MAKERS}
PICTURED = ("which-sign", "early-or-late", "which-cause", "remedy-first")
# At its worst turn 0.92 with the sideways load, 0.95 without it, and 0.99 to turn the lens.
CUT = TurnsCase(unloaded_nm=0.95, holds_nm=(0.91, 0.92, 0.93), turns_nm=(0.80, 0.99, 0.70))
TWELVE = MarksCase(left_up_mm=10.0, right_up_mm=11.2)
BOTH = GainsCase(margin=0.93, holds="a film", turns="cribbing", with_hold=1.56, with_turn=2.7)
FOURTEEN = LeftOverCase(order=Prescription(sphere_d=-4.0, cylinder_d=-2.0, axis_deg=170.0), turn_deg=14.0)


@pytest.mark.parametrize(
    ("slips", "margin"),
    [
        ((), 0.93),
        (("margin-turned-over",), 1.08),
        (("sideways-load-forgotten",), 0.96),
        # Above 1: a cut that slips would be called safe.
        (("mean-for-least",), 1.13),
        (("first-turn-taken",), 1.14),
    ],
)
def test_the_margin_of_a_cut(slips: tuple[str, ...], margin: float):
    assert answered("cut-margin", CUT, *slips) == pytest.approx(margin, abs=5e-3)


@pytest.mark.parametrize(
    ("is_calibrated", "chances"),
    [
        (False, {"right": 39, "safe": 0, "lack": 17, "over": 20, "other": 28}),
        (True, {"right": 28, "safe": 0, "lack": 17, "over": 20, "other": 39}),
    ],
)
def test_a_margin_of_1_2(is_calibrated: bool, chances: dict):
    case = ChanceCase(margin=1.2, is_calibrated=is_calibrated, keys=tuple(chances))
    assert case.chances() == chances
    assert answered("chance-of-slip", case) == "right"
    assert answered("chance-of-slip", case, "above-1-read-as-safe") == "safe"


def test_the_chance_asked_lies_between_two_that_are_told():
    for question in questions("chance-of-slip"):
        words = question.kind.written(question.right)
        assert 10 < int(words.split()[1]) < 50, words


@pytest.mark.parametrize(
    ("slips", "turn"),
    [
        ((), 2.0),
        (("half-the-distance",), 4.0),
        (("millimetres-for-degrees",), 1.2),
        (("slope-in-per-cent",), 3.5),
        (("radians-for-degrees",), 0.04),
    ],
)
def test_marks_that_rise_by_1_2_mm(slips: tuple[str, ...], turn: float):
    assert answered("turn-from-marks", TWELVE, *slips) == pytest.approx(turn, abs=0.05)


def test_the_side_that_lies_higher_tells_the_direction():
    (first, *_), (second, *_) = (
        MAKERS["turn-from-marks"].prompt(one)
        for one in (TWELVE, MarksCase(left_up_mm=11.2, right_up_mm=10.0))
    )
    assert "at your right lies higher: the lens has turned anticlockwise" in first
    assert "at your left lies higher: the lens has turned clockwise" in second


@pytest.mark.parametrize(
    ("slips", "turn"),
    # Corners of a flat top 28 whose centre lies 5 below the top: 26.15 mm apart, sqrt(14^2 - 5^2) each side.
    [((), 8.80), (("width-for-corners",), 8.21), (("half-the-distance",), 17.81)],
)
def test_a_segment_top_that_rises_by_4_mm(slips: tuple[str, ...], turn: float):
    case = TopCase(segment=segment("flat-top-28"), rise_mm=4.0)
    assert answered("segment-top-turned", case, *slips) == pytest.approx(turn, abs=5e-3)


@pytest.mark.parametrize(
    ("slips", "margin"),
    [
        ((), 4.53),
        (("gains-added",), 3.33),
        (("only-the-greater-counted",), 2.7),
        (("margins-multiplied",), 4.21),
    ],
)
def test_film_and_crib_together(slips: tuple[str, ...], margin: float):
    assert answered("gains-multiply", BOTH, *slips) == pytest.approx(margin, abs=5e-3)


@pytest.mark.parametrize(
    ("slips", "cylinder"),
    # 2 x 2.00 x sin 14 = 0.968.
    [
        ((), 0.97),
        (("not-doubled",), 0.48),
        (("turn-as-a-share-of-90",), 0.31),
        (("whole-cylinder-lost",), 2.0),
    ],
)
def test_a_cylinder_that_turned_by_14_degrees(slips: tuple[str, ...], cylinder: float):
    assert answered("cylinder-left-over", FOURTEEN, *slips) == pytest.approx(cylinder, abs=5e-3)


@pytest.mark.parametrize(
    ("slips", "prism"),
    # 2 x sin 14 = 0.484 mm of height, times 8 D over 10.
    [
        ((), 0.39),
        (("sphere-thought-harmless",), 0.0),
        (("centimetres-forgotten",), 3.87),
        (("distance-for-height",), 1.6),
    ],
)
def test_a_sphere_that_turned_by_14_degrees(slips: tuple[str, ...], prism: float):
    case = TurnedSphereCase(power_d=-8.0, away_mm=2.0, turn_deg=14.0)
    assert answered("turned-sphere-prism", case, *slips) == pytest.approx(prism, abs=5e-3)


@pytest.mark.parametrize("name", spoiled_names())
def test_a_drawing_holds_what_was_simulated(name: str):
    drawing, ran = drawing_of(name), spoiled(name).simulation
    values = drawing.values
    assert drawing.name == "spoiled-lens"
    assert {len(values[f"{which}_{axis}_mm"]) for which in ("finished", "ordered") for axis in "xy"} == {72}
    assert -180.0 < values["line_deg"] <= 180.0
    assert abs((values["line_deg"] - ran.slip_deg + 180.0) % 360.0 - 180.0) <= 0.5
    assert values["burnt"] == (BURNT_PATCH in ran.signs)
    # The places drawn show the shortfall, but for what lies between two of them.
    finished, ordered = (
        [complex(*point) for point in zip(values[f"{which}_x_mm"], values[f"{which}_y_mm"], strict=True)]
        for which in ("finished", "ordered")
    )
    short = max(abs(order) - abs(done) for done, order in zip(finished, ordered, strict=True))
    assert short == pytest.approx(ran.shortfall_mm, abs=0.2)


def test_drawing_and_solution_write_the_same_shortfall():
    question = next(one for one in questions("which-sign") if one.drawing is drawing_of("burnt"))
    (measured,) = (text for text in question.solution.words if "its rim is short by" in text)
    case = SpoiledLens(**question.drawing.values)
    assert f"short by {case.seen.short_mm:.1f} mm" in measured


def test_every_sign_is_asked_about_and_looks_like_itself():
    rights = {question.right for question in questions("which-sign")}
    assert rights == {NONE, LINE_OFF_LEVEL, BUMPED_OUTLINE, BURNT_PATCH}
    for question in questions("which-sign"):
        values = question.drawing.values
        if question.right == NONE:
            assert (values["line_deg"], values["burnt"]) == (0.0, 0)
        if question.right == LINE_OFF_LEVEL:
            # A line that can be seen to be off.
            assert 2.0 <= abs(values["line_deg"]) <= 178.0
        assert values["burnt"] == (question.right == BURNT_PATCH)


def test_only_lenses_that_turned_are_asked_when_they_did():
    assert {one.right for one in questions("early-or-late")} == {LINE_OFF_LEVEL, BUMPED_OUTLINE, BURNT_PATCH}


@pytest.mark.parametrize("name", PICTURED)
def test_it_has_a_picture(name: str):
    assert all(question.drawing.name == "spoiled-lens" for question in questions(name))


def test_the_cause_is_what_gains_most_when_it_is_put_right():
    for question in questions("which-cause"):
        keys = [option.key for option in question.kind.options]
        assert len(keys) == 4
        name = _lens_of(question)
        gained = {key: spoiled(name, key).cut.margin for key in keys}
        assert max(gained, key=gained.get) == question.right
    assert {one.right for one in questions("which-cause")} >= {"clean-lens", "dressed-wheel", "film"}


def _lens_of(question: object) -> str:
    return next(name for name in spoiled_names() if drawing_of(name) is question.drawing)


def test_the_remedy_is_the_cheapest_offered_that_is_enough():
    for question in questions("remedy-first"):
        name, offered = _lens_of(question), [option.key for option in question.kind.options]
        enough = [key for key in changes() if key in offered and spoiled(name, key).cut.margin >= BOUND]
        assert enough[0] == question.right
        assert "clamp" in offered
        # What the table tells, multiplied by hand, falls on the same side of the bound.
        terms = {term.symbol: term.value for term in question.given}
        for key, symbol in zip(
            [key for key in changes() if key in offered], [one for one in terms if one != "S"], strict=True
        ):
            assert (terms["S"] * terms[symbol] >= BOUND) == (key in enough), (name, key)
    assert len({one.right for one in questions("remedy-first")}) >= 4


def test_what_a_remedy_is_here_is_told_apart():
    kinds = kinds_of("old-pad")
    assert kinds["right"] == ("film",)
    assert "fresh-pad" in kinds["short"]
    assert "crib" in kinds["dear"]
    assert {"clean-lens", "dressed-wheel", "round-block"} == set(kinds["idle"])


def test_every_cause_of_a_wrong_axis_is_asked_about():
    assert {one.right for one in questions("wrong-axis-where")} == {BEFORE, SLIP, RIM, MACHINE}


def test_what_a_turn_spoils_hangs_on_the_lens():
    spoils = {lens: {one.key for one in spoiled_on(lens)} for lens in lenses()}
    assert all({"coat", "rim"} <= keys for keys in spoils.values())
    assert "top" in spoils["flat"]
    assert "top" not in spoils["round"]
    assert "plane" in spoils["polarised"]
    assert "axis" not in set().union(*spoils.values())


def test_clamp_force_and_home_treatments_are_never_right():
    never = {key for key, one in against_slip().items() if one.belongs}
    assert {"clamp", "spray", "try"} <= never
    assert {"film", "crib", "wipe"} <= set(against_slip()) - never


def test_what_is_told_of_wheel_oil_and_block_is_what_the_bench_has():
    assert "two and a half times" in against_slip()["dress"].reason
    assert Bench().wheels["glazed"] == 2.5
    last_hint = questions("which-cause")[0].hints[-1]
    assert "a used one asks 1.4 times the force, a loaded one 1.8 times, a glazed one 2.5 times" in last_hint
    # Oil leaves about half of what holds, and a half-eye about six tenths of what a round block does.
    for name, cure, share in (("bumped", "clean-lens", 0.5), ("half-eye-block", "round-block", 0.6)):
        before, after = (spoiled(name, change).cut.holding.front_nmm for change in ("", cure))
        assert before / after == pytest.approx(share, abs=0.05)
    # Half the bite asks about half the torque.
    assert spoiled("line-off", "smaller-bites").cut.margin == pytest.approx(
        2.0 * spoiled("line-off").cut.margin, rel=0.1
    )


def test_a_verdict_stands_before_each_reason():
    solution = questions("never-against-slip")[0].solution.words
    verdicts = {text.split(": ", 1)[1].split(". ")[0] for text in solution[:-1]}
    assert verdicts == {"never", "this helps"}
    sphere = questions("turned-sphere")[0].solution.words
    assert {text.split(": ", 1)[1].split(". ")[0] for text in sphere[:-1]} == {"yes", "no"}


def test_what_is_told_says_where_it_comes_from():
    table = read_table("lablib.questions.slip", "told.toml")
    assert table["source"] == "common practice"
    assert require_grade("told", table["grade"]) == "teaching estimate"
    keys = [*on_a_sphere(), *against_slip()]
    assert len(set(keys)) == len(keys)


def test_how_a_lens_was_set_up_is_told_whole():
    assert setup_sentences(spoiled("oily-old-strong-minus")) == (
        "Single vision, -7.50 -0.75 x 160, thiourethane 1.67, an ordinary coat, from a 75 mm blank.",
        "Lens: oil on it; pad of 24 months, no film, round block, no tape on its back.",
        "Wheel: sharp; bites of 2 mm a turn; cut from the uncut blank.",
    )
    assert "cribbed before to 2 mm over the outline" in setup_sentences(spoiled("filmed-minus"))[2]


def test_every_maker_is_of_lesson_12():
    assert {maker.lesson for maker in slip.MAKERS} == {"12"}
    assert len(slip.MAKERS) >= 8
    assert len(SEEDS) >= 20
