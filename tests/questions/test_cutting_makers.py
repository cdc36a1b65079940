"""Makers about cutting: the trade's examples to the printed digit, and their data worked out on the bench."""

from dataclasses import replace

import numpy as np
import pytest
from made_questions import SEEDS, answered, questions

from lablib.bench.cutting import touch_of
from lablib.bench.geometry import angles_rad
from lablib.bench.machine import lens_material
from lablib.bench.margin import CutResult, work_cut
from lablib.bench.morning import MorningLens
from lablib.bench.plan import UncutLens
from lablib.bench.setup import Setup
from lablib.optics.care import care
from lablib.questions import cutting
from lablib.questions.cutting.arm import ArmCase
from lablib.questions.cutting.crib import CribCase
from lablib.questions.cutting.feeds import table
from lablib.questions.cutting.force import ForceCase
from lablib.questions.cutting.morning import MorningCase
from lablib.questions.cutting.peak import torques_nmm
from lablib.questions.cutting.time import TimeCase
from lablib.questions.cutting.water import WaterCase
from lablib.questions.cutting.wheel import WheelCase
from lablib.study.draws import Draws

MAKERS = {maker.name: maker for maker in cutting.MAKERS}
# The trade's example: u 0.5, 200 mm3/s, 15.7 m/s, 3.2 mm.
PLACE = ForceCase(material="polycarbonate-1.59", removal_mm3_per_s=200.0, thickness_mm=3.2)


@pytest.mark.parametrize(
    ("slips", "force"),
    [((), 6.85), (("rubbing-left-out",), 6.37), (("radius-for-diameter",), 13.21)],
)
def test_the_force_of_chips_and_rubbing(slips: tuple[str, ...], force: float):
    assert answered("cutting-force", PLACE, *slips) == pytest.approx(force, abs=5e-3)


def test_a_dull_wheel_multiplies_all_of_it():
    dull = replace(PLACE, wheel="loaded")
    assert answered("cutting-force", dull) == pytest.approx(1.8 * 6.846, abs=2e-3)
    assert answered("cutting-force", dull, "factor-on-chips-alone") == pytest.approx(
        1.8 * 6.366 + 0.48, abs=2e-3
    )
    assert answered("cutting-force", dull, "wheel-factor-left-out") == answered("cutting-force", PLACE)


@pytest.mark.parametrize(
    ("slips", "force"),
    [
        ((), 13.2),
        (("slower-taken-as-gentler",), 3.7),
        (("speed-taken-as-nothing",), 6.85),
        (("rubbing-scaled-too",), 13.69),
        (("rubbing-left-out",), 12.73),
    ],
)
def test_half_the_wheel_speed(slips: tuple[str, ...], force: float):
    # 75 mm at 4,000 rpm run at 15.7 m/s; at 2,000 at half of that.
    slowed = replace(PLACE, diameter_mm=75.0, before_rpm=4000.0, speed_rpm=2000.0)
    assert answered("half-wheel-speed", slowed, *slips) == pytest.approx(force, abs=0.05)


@pytest.mark.parametrize(
    ("slips", "speed"),
    [
        ((), 15.7),
        (("radius-for-diameter",), 7.9),
        (("minutes-for-seconds",), 942.5),
        (("millimetres-for-metres",), 15708.0),
        (("pi-left-out",), 5.0),
    ],
)
def test_the_speed_of_the_wheels_rim(slips: tuple[str, ...], speed: float):
    case = WheelCase(diameter_mm=100.0, speed_rpm=3000.0)
    assert answered("wheel-rim-speed", case, *slips) == pytest.approx(speed, abs=0.05)


@pytest.mark.parametrize(
    ("slips", "arm"),
    [
        ((), 21.78),
        (("half-width-taken",), 25.0),
        (("way-to-the-contact",), 22.85),
        (("normal-for-direction",), 20.66),
    ],
)
def test_the_arm_of_a_light_cut(slips: tuple[str, ...], arm: float):
    case = ArmCase(half_width_mm=25.0, half_height_mm=18.0, normal_deg=45.0)
    assert answered("light-cut-arm", case, *slips) == pytest.approx(arm, abs=5e-3)


def test_the_arm_against_the_bench():
    for case in [MAKERS["light-cut-arm"].draw(Draws(seed)) for seed in range(5)]:
        angle = angles_rad(7200)
        a, b = case.half_width_mm, case.half_height_mm
        rim = a * b / np.hypot(b * np.cos(angle), a * np.sin(angle))
        touch = touch_of(rim, np.zeros(7200), 50.0)
        normal = np.degrees(angle - np.arctan2(touch.slope_mm, touch.support_mm))
        arm = np.interp(case.normal_deg, normal[:1800], touch.arm_tangential_mm[:1800])
        contact = np.interp(case.normal_deg, normal[:1800], rim[:1800])
        assert answered("light-cut-arm", case) == pytest.approx(arm, abs=1e-3)
        assert answered("light-cut-arm", case, "way-to-the-contact") == pytest.approx(contact, abs=1e-3)


def test_where_the_peak_is():
    found = {True: set(), False: set()}
    for seed in SEEDS:
        case = MAKERS["where-the-peak-is"].draw(Draws(seed))
        torques = torques_nmm(case)
        assert int(answered("where-the-peak-is", case)) == 1 + int(np.argmax(torques))
        assert case.thickness_mm(case.rims_mm[-1]) > 1.0
        found[case.is_plus].add(answered("where-the-peak-is", case))
    assert found[False] == {"1"}
    assert len(found[True]) >= 3


def test_thickness_times_radius_squared_tells_the_peak():
    # What the hint says has to find the right one among the turns that are offered.
    for seed in range(100):
        case = MAKERS["where-the-peak-is"].draw(Draws(seed))
        rough = [turn for turn in case.shown if turn <= case.turns]
        product = {
            turn: case.rims_mm[turn - 1] ** 2 * case.thickness_mm(case.rims_mm[turn - 1]) for turn in rough
        }
        assert str(max(product, key=product.get)) == answered("where-the-peak-is", case)


# --- Cribbing, feeds, time ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("is_here", "slips", "margin"),
    [
        (True, (), 0.93),
        (True, ("crib-taken-as-free",), 2.71),
        (True, ("margin-turned-over",), 1.08),
        (True, ("mean-of-both-cuts",), 1.82),
        (False, (), 2.71),
        (False, ("crib-counted-here",), 0.93),
        (False, ("margin-turned-over",), 0.37),
    ],
)
def test_the_margin_of_a_cribbed_job(is_here: bool, slips: tuple[str, ...], margin: float):
    # The hard job: 0.92 N m hold 0.99 of the uncut blank, and 0.34 of the rim cribbed to 2 mm.
    case = CribCase(holds_nm=0.92, crib_nm=0.99, cut_nm=0.34, is_here=is_here)
    assert answered("crib-is-a-cut", case, *slips) == pytest.approx(margin, abs=5e-3)


def disc(*, thickness: float = 4.0, energy: float = 0.35, blank: float = 60.0, **setup: object) -> CutResult:
    """A flat round lens of 40 mm, out of a blank."""
    flat = UncutLens(
        outline_mm=np.full(720, 20.0),
        blank_diameter_mm=blank,
        blank_x_mm=0.0,
        blank_y_mm=0.0,
        thickness_mm=lambda x, y: np.full_like(x, thickness),
        centre_thickness_mm=thickness,
    )
    material = replace(lens_material("hard-resin-1.50"), specific_energy_j_per_mm3=energy)
    return work_cut(flat, material=material, setup=Setup(**setup))


CHANGED = {
    "thicker": {"thickness": 8.0},
    "duller": {"wheel": "used"},
    "tougher": {"energy": 0.55},
    "larger": {"blank": 70.0},
}


@pytest.mark.parametrize("change", list(CHANGED))
@pytest.mark.parametrize("feed", ["depth", "head force", "torque cap"])
def test_what_grows_in_each_feed(feed: str, change: str):
    setup = {"feed": feed, "head_force_n": 6.0, "torque_cap_nmm": 200.0}
    before, after = disc(**setup), disc(**(setup | CHANGED[change]))
    turns = [result.cutting.plan.finishing.size for result in (before, after)]
    grows = {
        "torque": after.peak_cutting_torque_nmm > 1.01 * before.peak_cutting_torque_nmm,
        "time": turns[1] > turns[0],
    }
    expected = table()["change"][change][feed]
    assert grows == {"torque": expected != "time", "time": expected != "torque"}


@pytest.mark.parametrize(
    ("slips", "seconds"),
    [
        ((), 67.5),
        (("finishing-turns-forgotten",), 60.0),
        (("part-of-a-turn",), 61.875),
        (("turns-a-minute-as-seconds",), 72.0),
    ],
)
def test_the_time_of_a_cut(slips: tuple[str, ...], seconds: float):
    # 14.5 mm of roughing in bites of 2 mm are 7.25 of them, so eight turns of 7.5 s, and one to finish.
    case = TimeCase(away_mm=15.0, stock_mm=0.5, bite_mm=2.0, fine_mm=1.0, lens_rpm=8.0)
    assert answered("cut-time", case, *slips) == pytest.approx(seconds)


def test_the_time_of_a_round_cut_on_the_bench():
    case = TimeCase(away_mm=10.0, stock_mm=0.5, bite_mm=2.0, fine_mm=1.0, lens_rpm=8.0)
    assert answered("cut-time", case) == 7.5 * disc().cutting.plan.finishing.size


# --- Wet or dry, and the test lens --------------------------------------------------------------------


def test_every_material_is_cut_as_its_care_says():
    for name in ("crown-glass-1.523", "hard-resin-1.50", "polycarbonate-1.59", "episulfide-1.74"):
        way = answered("wet-or-dry", WaterCase(material=name, job="a remake", shown=("wet",)))
        words = care(name).cut_words
        assert (way == "glass") == (care(name).wheel == "glass")
        assert (way == "dry") == words.startswith("roughed dry")
        assert way in ("dry", "glass") or words.startswith("wet")


def test_polycarbonate_and_glass_come_up_often_enough():
    ways = [question.right for question in questions("wet-or-dry")]
    assert min(ways.count(way) for way in ("wet", "dry", "glass")) > 90


def test_a_test_lens_too_large_is_set_smaller():
    lens = MorningLens(
        axis_set_deg=90.0,
        axis_read_deg=90.0,
        width_set_mm=50.0,
        width_read_mm=50.3,
        height_set_mm=36.0,
        height_read_mm=36.3,
    )
    case = MorningCase(lens=lens, shown=("size", "onwards", "okay", "axis", "shape"))
    words = {option.key: option.words for option in MAKERS["morning-lens"].kind(case).options}
    assert answered("morning-lens", case) == "size"
    assert (words["size"], words["onwards"]) == ("set the size 0.3 mm smaller", "set the size 0.3 mm larger")


def test_a_test_lens_off_anticlockwise_is_set_back_clockwise():
    lens = MorningLens(
        axis_set_deg=180.0,
        axis_read_deg=2.0,
        width_set_mm=50.0,
        width_read_mm=50.0,
        height_set_mm=36.0,
        height_read_mm=36.0,
    )
    case = MorningCase(lens=lens, shown=("axis", "onwards", "okay", "size"))
    words = {option.key: option.words for option in MAKERS["morning-lens"].kind(case).options}
    assert answered("morning-lens", case) == "axis"
    assert words["axis"] == "turn the axis setting 2 degrees clockwise"


def test_every_fault_of_a_test_lens_comes_up():
    rights = [question.right for question in questions("morning-lens")]
    assert min(rights.count(fault) for fault in ("okay", "axis", "size", "shape")) > 50
