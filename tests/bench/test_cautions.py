"""Cautions beside the margin: each by its name, its words, and silence where nothing is amiss."""

import pytest
from reference_jobs import EASY, superellipse, work

from lablib.bench.cautions import cautions
from lablib.bench.faces import LensFaces
from lablib.bench.machine import Bench, lens_material

FACES = LensFaces.spheres(front_d=2.0, back_d=-8.0)
TEXTS = {
    "clamp-above-cap": (
        {},
        {"clamp_force_n": 400.0},
        "clamp force 400 N may craze the coat: this lens bears about 290 N; set that or less",
    ),
    "block-does-not-clear": (
        {"outline": superellipse(b_mm=22.0)},
        {},
        "the block stands 1.0 mm outside the finished outline and the wheel would cut into it: "
        "take a smaller block or another blocking point",
    ),
    "pad-too-cold": (
        {},
        {"temperature_c": 12.0},
        "at 12 C a pad does not bond properly, whatever its strength: "
        "bring pad, block and lens to 15 C or more first",
    ),
    "pad-past-shelf-life": (
        {},
        {"pad_age_months": 18.0},
        "a pad of 18 months is past its shelf life of 12: take a fresh one",
    ),
    "tip-presses-on-a-spot": (
        {},
        {"tip_fit": "toric", "tip_stiffness": "stiff"},
        "a stiff tip that does not fit (spherical tip on a toric back) presses with about 9.5 MPa in places "
        "at 300 N and may craze the coat: take a soft tip or one of the back's curve",
    ),
    "grip-layer-stripped": (
        {},
        {"grip_layer": "stripped"},
        "the wipe has taken off the maker's grip layer, and the bare slick coat holds less: put a film on, "
        "and wipe the next lens only with what its maker allows",
    ),
    "film-creased": (
        {},
        {"film": True, "film_wrinkle": 0.2},
        "the film has a crease under the block, with air under 20 % of it: take it off and lay a new one",
    ),
    "block-face-worn": (
        {},
        {"block_face": "worn"},
        "the face of the block is worn, so the pad holds less on it: take another block before the pad goes "
        "on",
    ),
    "block-face-dirty": (
        {},
        {"block_face": "dirty"},
        "the face of the block is dirty, so the pad holds less on it: clean it before the pad goes on",
    ),
    "block-key-worn": (
        {},
        {"key_play_mm": 0.2},
        "the block has 0.2 mm of play at its key, so the axis may be off by 1.4 degrees before anything "
        "slips: take another block",
    ),
    "block-curve-off": (
        {"faces": FACES},
        {"block_curve_d": 6.0},
        "a block of 6.00 D on a front of 2.00 D bears with 64 % of its pad: take a block nearer the curve of "
        "the front",
    ),
    "tip-presses-on-a-spot-of-its-face": (
        {"faces": FACES},
        {"tip_face_mm": 150.0, "tip_stiffness": "stiff"},
        "a stiff tip of 150 mm touches this back with 41 % of its face and presses with about 5.5 MPa in "
        "places, which may craze the coat: take a soft tip or one of the back's curve",
    ),
    "wheel-drives-the-lens": (
        {},
        {"wheel_sense": "with"},
        "the wheel runs with the lens and at places drives it ahead: a lens that starts to turn there is "
        "snatched round, so the margin holds only up to the first movement",
    ),
    "roughed-against-the-manual": (
        EASY,
        {"water": "dry"},
        "hard-resin-1.50 is made to be roughed wet and is roughed dry here: warm swarf smears, loads the "
        "wheel and may scorch the rim; rough it wet and finish it wet, as the machine's manual says",
    ),
    "roughed-against-the-manual-wet": (
        EASY,
        {"water": "wet", "material": lens_material("polycarbonate-1.59")},
        "polycarbonate-1.59 is made to be roughed dry and is roughed wet here: cold swarf packs the wheel, "
        "and the force goes up; rough it dry and finish it wet, as the machine's manual says",
    ),
    "wheel-for-another-material": (
        {},
        {"wheel_for": "glass"},
        "hard-resin-1.50 on a wheel for glass: glass never goes on one for plastics, nor plastics on one for "
        "glass; change the wheel, the figures here are for one for plastics",
    ),
    "head-force-does-not-yield": (
        {},
        {"feed": "head force", "head_force_n": 15.0, "skin": "oily"},
        "under constant head force a lens that slips is not relieved: it stops under the wheel and is ground "
        "on one side; stop the machine at once, and cure the margin first",
    ),
    "motor-at-its-limit": (
        {},
        {"wheel": "glazed", "bench": Bench(motor_power_w=300.0)},
        "the wheel motor is at its limit of 300 W, so the wheel slows and the lens is cut more slowly than "
        "planned: take smaller bites or crib",
    ),
}


def test_a_plain_cut_needs_none():
    assert cautions(work()) == ()
    for setup in (
        {"temperature_c": 15.0},
        {"pad_age_months": 12.0},
        {"clamp_force_n": 290.0},
        {"tip_fit": "toric"},
        {"tip_fit": "matched", "tip_stiffness": "stiff"},
        {"film_wrinkle": 0.2},
        {"coat": "coated", "grip_layer": "stripped"},
        {"grip_layer": "present"},
        {"key_play_mm": 0.05},
        {"water": "wet"},
        {"wheel_for": "plastics"},
        {"feed": "head force"},
    ):
        assert cautions(work(**setup)) == ()


@pytest.mark.parametrize("name", list(TEXTS))
def test_every_caution(name: str):
    parts, setup, text = TEXTS[name]
    (caution,) = cautions(work(parts, **setup))
    assert (caution.name, caution.text) == (name.removesuffix("-of-its-face").removesuffix("-wet"), text)
