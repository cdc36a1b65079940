"""Cases for tests of the drawings of questions, drawn from seeds; all invented."""

import math
import random
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.pictures.asked import Asked
from lablib.pictures.asked_base import Value
from lablib.pictures.turned_lens_data import DESIGNS

SEEDS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A drawing's values, with its right answer, a wrong one near it, and values far beyond the picture."""

    name: str
    values: dict
    right: Value
    wrong: Value
    off: tuple[Value, ...] = (4000.0, -4000.0)

    def states(self) -> dict[str, Asked]:
        """What is shown before an answer, with a wrong, a right and a hopeless one, and when it is told."""
        shown = {
            "case alone": (None, None),
            "given": (self.wrong, None),
            "wrong": (self.wrong, self.right),
            "right": (self.right, self.right),
            "told": (None, self.right),
        }
        for value in self.off:
            shown[f"given {value}"], shown[f"answered {value}"] = (value, None), (value, self.right)
        return {
            state: Asked(values=self.values, given=given, right=right)
            for state, (given, right) in shown.items()
        }


def grid(chance: random.Random, low: float, high: float, step: float = 0.5) -> float:
    """A number on a grid."""
    return low + step * chance.randint(0, round((high - low) / step))


def near(chance: random.Random, right: float, least: float) -> float:
    """A wrong value, anything from half to twice the right one, and not as near to it as `least`."""
    wrong = right * chance.uniform(0.5, 2.0)
    return wrong if abs(wrong - right) > least else right + 2.0 * least


def pair(seed: int) -> Case:
    chance = random.Random(seed)
    eye = chance.choice(("right", "left"))
    a, b, dbl = grid(chance, 40.0, 62.0), grid(chance, 24.0, 52.0), grid(chance, 12.0, 26.0)
    values = {"a_mm": a, "b_mm": b, "dbl_mm": dbl, "eye": eye, "show_eyes": chance.random() < 0.7}
    values["shade"] = chance.random() < 0.7
    distance = grid(chance, 26.0, 37.0)
    if chance.random() < 0.5:
        shown = {"right_pd_mm": distance, "left_pd_mm": grid(chance, 26.0, 37.0)}
        if eye == "left":
            shown = {"right_pd_mm": shown["left_pd_mm"], "left_pd_mm": distance}
        right = (a + dbl) / 2.0 - distance
        values |= shown | {"measured_from": "boxed centre"}
    else:
        right = distance
        values |= {"right_pd_mm": 0.0, "left_pd_mm": 0.0, "measured_from": "bridge"}
    return Case(name="pair", values=values, right=right, wrong=near(chance, right, 0.5))


def outline(chance: random.Random, eye: Eye) -> tuple[np.ndarray, np.ndarray]:
    """Points round a lens, every fifth degree."""
    shape = chance.choice(
        (
            OutlineShape.named("pilot"),
            OutlineShape.named("panto"),
            OutlineShape.superellipse(chance.uniform(2.0, 12.0)),
        )
    )
    a = grid(chance, 40.0, 62.0)
    b = min(grid(chance, 24.0, 52.0), a)
    whole = Frame(a_mm=a, b_mm=b, dbl_mm=18.0, shape=shape).outline(eye)
    return whole.x_mm[::10], whole.y_mm[::10]


def front(chance: random.Random, eye: Eye) -> dict:
    x, y = outline(chance, eye)
    across = eye.nasal_sign * grid(chance, -2.0, 8.0)
    return {
        "outline_x_mm": tuple(x.tolist()),
        "outline_y_mm": tuple(y.tolist()),
        "centre_x_mm": across,
        "centre_y_mm": grid(chance, -3.0, 6.0),
    }


def blank(seed: int) -> Case:
    chance = random.Random(seed)
    values = front(chance, chance.choice(tuple(Eye)))
    away = np.hypot(
        np.array(values["outline_x_mm"]) - values["centre_x_mm"],
        np.array(values["outline_y_mm"]) - values["centre_y_mm"],
    )
    right = 2.0 * float(away.max())
    return Case(name="blank", values=values, right=right, wrong=near(chance, right, 0.3))


def edge_place(seed: int) -> Case:
    chance = random.Random(seed)
    eye = chance.choice(tuple(Eye))
    axis = float(chance.choice((0, chance.randint(1, 180))))
    values = front(chance, eye) | {"axis_deg": axis, "eye": eye.value}
    right = float(chance.randint(0, 359))
    wrong = (right + chance.choice((5, 20, 90, 180, 270, -8))) % 360.0
    return Case(name="edge-place", values=values, right=right, wrong=wrong, off=())


def sag(radius: float, half: float) -> float:
    """Height of a cap, with the sign of its radius."""
    return math.copysign(abs(radius) - math.sqrt(radius**2 - half**2), radius) if radius else 0.0


def section(seed: int) -> Case:
    chance = random.Random(seed)
    left, right = grid(chance, 15.0, 35.0), grid(chance, 15.0, 35.0)
    side = chance.choice(("left", "right", "both"))
    if side == "both":
        right = left
    front, back = (grid(chance, low, 600.0) * chance.choice((0, 1, 1, 1)) for low in (60.0, 45.0))
    half = left if side == "left" else right
    bend = max(sag(front, reach) - sag(back, reach) for reach in (left, right))
    centre = round(max(1.0, bend + 0.8), 1)
    values = {"half_left_mm": left, "half_right_mm": right, "front_radius_mm": front, "back_radius_mm": back}
    thickness = centre - sag(front, half) + sag(back, half)
    if chance.random() < 0.6:
        sides = chance.choice((("nasal", "temporal"), ("temporal", "nasal")))
        values |= dict(zip(("left_words", "right_words"), sides, strict=True))
    return Case(
        name="section",
        values=values | {"centre_mm": centre, "side": side},
        right=thickness,
        wrong=near(chance, thickness, 0.05),
    )


def cap(seed: int) -> Case:
    chance = random.Random(seed)
    chord = grid(chance, 20.0, 80.0)
    radius = grid(chance, chord * 0.55 // 1 + 1.0, 600.0, 0.1)
    height = sag(radius, chord / 2.0)
    return Case(
        name="cap",
        values={"radius_mm": round(radius, 1), "chord_mm": chord},
        right=height,
        wrong=near(chance, height, 0.05),
    )


_NAMES = ("block to pad", "pad core", "pad to film", "film to coat", "coat to lens")


def joints(seed: int) -> Case:
    chance = random.Random(seed)
    count = chance.randint(1, 5)
    values = tuple(round(chance.uniform(0.3, 6.0), 2) for _ in range(count))
    back = round(chance.uniform(0.1, 1.5), 2)
    right = min(values) + back
    return Case(
        name="joints",
        values={"names": _NAMES[:count], "values": values, "back": back},
        right=right,
        wrong=chance.choice((sum(values) + back, sum(values) / count, near(chance, right, 0.05))) + 0.011,
    )


def level(seed: int) -> Case:
    chance = random.Random(seed)
    eye = chance.choice(tuple(Eye))
    x, y = outline(chance, eye)
    half_b, from_tangent = float(np.abs(y).max()), chance.random() < 0.5
    values = {"outline_x_mm": tuple(x.tolist()), "outline_y_mm": tuple(y.tolist())}
    values |= {"centre_x_mm": 0.0, "centre_y_mm": 0.0, "half_b_mm": half_b, "eye": eye.value}
    values["measured_from"] = "lowest tangent" if from_tangent else "midline"
    if chance.random() < 0.5:
        middle = eye.nasal_sign * grid(chance, 0.0, 5.0)
        level_mm = grid(chance, -4.0, 2.0)
        values |= {"engraving_x_mm": (middle - 17.0, middle + 17.0), "engraving_y_mm": level_mm}
    right = grid(chance, -8.0, 8.0) + (half_b if from_tangent else 0.0)
    return Case(name="level", values=values, right=right, wrong=near(chance, right, 0.5))


def across(seed: int) -> Case:
    chance = random.Random(seed)
    x, y = outline(chance, Eye.RIGHT)
    a, dbl = 2.0 * float(np.abs(x).max()), grid(chance, 12.0, 26.0)
    values = {"outline_x_mm": tuple(x.tolist()), "outline_y_mm": tuple(y.tolist()), "dbl_mm": dbl}
    values["zero_mm"] = -(a + dbl / 2.0) - grid(chance, 0.0, 6.0)
    way = chance.choice(("right", "left"))
    if chance.random() < 0.5:
        right = grid(chance, 26.0, 37.0)
        values |= {"right_pupil_mm": right, "left_pupil_mm": grid(chance, 26.0, 37.0), "from_mm": 0.0}
    else:
        right = dbl
        values["from_mm"] = -dbl / 2.0 if way == "right" else dbl / 2.0
    return Case(name="across", values=values | {"way": way}, right=right, wrong=near(chance, right, 0.5))


# What the drawing of prisms is asked about, in the order of the seeds.
PRISM_ASKED = (
    "base",
    "between the eyes",
    "base of both together",
    "centre inwards",
    "centre upwards",
    "base",
)


def prism_pair(seed: int) -> Case:
    chance = random.Random(seed)
    asked = PRISM_ASKED[seed % len(PRISM_ASKED)]
    eye = (
        "both" if asked in ("between the eyes", "base of both together") else chance.choice(tuple(Eye)).value
    )
    values = {"asked": asked, "eye": eye, "reach_prism_d": round(chance.uniform(1.0, 12.0), 2)}
    fits = values["reach_prism_d"]
    off = ((4000.0, 0.0), (0.0, -4000.0), (-1e300, 1e300))
    if asked == "between the eyes":
        bases = {f"{one}_up_prism_d": chance.uniform(-0.5, 0.5) * fits for one in Eye}
        values |= {"up_mm": -float(chance.randint(4, 12))} | bases
        right = fits * chance.uniform(0.1, 1.0)
        return Case(name="prism-pair", values=values, right=right, wrong=near(chance, right, 0.05))
    if asked == "base of both together":
        centre = grid(chance, 27.0, 36.0)
        values |= {"right_centre_mm": centre, "left_centre_mm": centre, "in_mm": grid(chance, -4.0, 4.0)}
        right, wrong = ((chance.choice((-1, 1)) * fits * chance.uniform(0.1, 2.0), 0.0) for _ in range(2))
        return Case(name="prism-pair", values=values, right=right, wrong=wrong, off=off)
    if asked != "base":
        order = {chance.choice(("order_in_prism_d", "order_up_prism_d")): chance.choice((-1, 1)) * 0.8 * fits}
        values |= {"has_centre": False} | order
        right = chance.choice((-1, 1)) * chance.uniform(2.0, 12.0)
        return Case(name="prism-pair", values=values, right=right, wrong=near(chance, right, 0.5))
    if chance.random() < 0.3:
        values |= {"has_centre": False, "in_degrees": True}
    else:
        values |= {"in_mm": grid(chance, -4.0, 4.0), "up_mm": grid(chance, -12.0, 12.0)}
        values["axis_deg"] = float(chance.choice((0, chance.randint(1, 180))))
    right, wrong = (
        tuple(part * fits * chance.uniform(0.1, 0.7) for part in chance.choices((-1, 1), k=2))
        for _ in range(2)
    )
    return Case(name="prism-pair", values=values, right=right, wrong=wrong, off=off)


def spoiled_lens(seed: int) -> Case:
    """A lens whose rim is short here and there, turned anyhow; what it was turned by is asked."""
    chance = random.Random(seed)
    x, y = outline(chance, chance.choice(tuple(Eye)))
    share = np.where(np.arange(x.size) % 36 < chance.randint(0, 9), chance.uniform(0.85, 1.0), 1.0)
    rows = {"ordered_x_mm": x, "ordered_y_mm": y, "finished_x_mm": share * x, "finished_y_mm": share * y}
    turned = float(chance.randint(-179, 180))
    values = {name: tuple(row.tolist()) for name, row in rows.items()} | {"line_deg": turned}
    values |= {"design": chance.choice(DESIGNS), "burnt": chance.randint(0, 1)}
    values["block"] = chance.choice(("round", "half-eye"))
    wrong = turned + chance.choice((5, 20, 90, 180, -8))
    return Case(name="spoiled-lens", values=values, right=turned, wrong=float(wrong), off=())


MAKE: dict[str, Callable[[int], Case]] = {
    "pair": pair,
    "blank": blank,
    "edge-place": edge_place,
    "section": section,
    "cap": cap,
    "joints": joints,
    "level": level,
    "across": across,
    "prism-pair": prism_pair,
    "spoiled-lens": spoiled_lens,
}
