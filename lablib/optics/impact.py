"""Impact: the falling ball, the least thickness of safety lenses, and what counts as a broken lens."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lablib.datafile import read_table, require_grade
from lablib.errors import require_between, require_one_of

_HEAVIEST_G, _HIGHEST_MM = 5000.0, 10_000.0
_POWER_D = 40.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DropBall:
    """A ball that falls on a lens.

    mass_g: of the ball [g].
    height_mm: it falls through, from rest [mm].
    words, source, grade: what it is, where the numbers come from, and how good they are.

    Raises LabError for a mass or height out of range.
    """

    mass_g: float
    height_mm: float
    words: str = "a falling ball"
    source: str = "as given"
    grade: str = "teaching estimate"

    def __post_init__(self) -> None:
        require_between("mass of the ball", self.mass_g, low=0.0, high=_HEAVIEST_G, unit="g", open_low=True)
        require_between(
            "height of the fall", self.height_mm, low=0.0, high=_HIGHEST_MM, unit="mm", open_low=True
        )
        require_grade("drop ball", self.grade)

    @property
    def energy_j(self) -> float:
        """The energy it arrives with, m g h [J]; air is left out."""
        return self.mass_g / 1000.0 * gravity_m_per_s2() * self.height_mm / 1000.0

    @property
    def speed_m_per_s(self) -> float:
        """The speed it arrives with, sqrt(2 g h) [m/s]; air is left out."""
        return math.sqrt(2.0 * gravity_m_per_s2() * self.height_mm / 1000.0)


def dress_drop_ball() -> DropBall:
    """Return the test ball of dress lenses."""
    row = _table()["drop_ball"]
    return DropBall(
        mass_g=row["mass_g"],
        height_mm=row["height_mm"],
        words=f"{row['ball']}, from {row['height_words']}",
        source=row["source"],
        grade=row["grade"],
    )


def gravity_m_per_s2() -> float:
    """Return the acceleration of free fall [m/s2]."""
    return _table()["gravity"]["value"]


def safety_levels() -> Mapping[str, str]:
    """Return the levels of safety lenses by name, in words."""
    rows = _table()["safety"]["level"]
    return MappingProxyType({name: row["words"] for name, row in rows.items()})


def least_safety_thickness_mm(level: str, *, most_plus_d: float) -> float:
    """Return how thick a safety lens is at its thinnest place, at least [mm].

    level: "basic" or "impact-rated".
    most_plus_d: power of the most plus meridian [D].

    Raises LabError for another level or a power out of range.
    Source: ANSI Z87.1-2020 as quoted in an insurer's manual; local law and the edition in force decide.
    """
    rows = _table()["safety"]["level"]
    row = rows[require_one_of("level of a safety lens", level, tuple(rows))]
    power = require_between("most plus meridian", most_plus_d, low=-_POWER_D, high=_POWER_D, unit="D")
    if "plus_from_d" in row and round(power, 6) >= row["plus_from_d"]:
        return row["plus_least_mm"]
    return row["least_mm"]


def safety_source() -> str:
    """Return where the least thicknesses come from, as a learner reads it."""
    row = _table()["safety"]
    return f"{row['source']}; {row['plus_meridian']}"


def fracture_words() -> tuple[str, str]:
    """Return what counts as a broken lens, and the source of that."""
    row = _table()["fracture"]
    return row["words"], row["source"]


def impact_cautions() -> tuple[str, ...]:
    """Return what to mind about impact, a sentence or two each."""
    return tuple(_table()["caution"]["texts"])


def _table() -> dict:
    return read_table("lablib.optics", "impact.toml")
