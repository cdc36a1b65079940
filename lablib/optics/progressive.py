"""Progressive designs as the maker's chart gives them: every mark, counted from the fitting cross.

What stays in a finished lens are the two engravings, level with one another. The prism reference point lies
midway between them; every other mark is wiped off and is found again from the engravings and the chart.
"""

from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.errors import LabError, require_one_of
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits

ADDITION_SIDES = ("front", "back")
NASAL_ENGRAVING, TEMPORAL_ENGRAVING = "nasal engraving", "temporal engraving"
FITTING_CROSS, PRISM_POINT = "fitting cross", "prism reference point"
DISTANCE_CIRCLE, NEAR_CIRCLE = "distance circle", "near circle"
MARKS = (
    FITTING_CROSS,
    PRISM_POINT,
    NASAL_ENGRAVING,
    TEMPORAL_ENGRAVING,
    DISTANCE_CIRCLE,
    NEAR_CIRCLE,
)
_LIMITS = {
    "engravings_apart_mm": "engravings_apart_mm",
    "engraving_below_cross_mm": "below_cross_mm",
    "prism_point_below_cross_mm": "below_cross_mm",
    "distance_circle_above_cross_mm": "above_cross_mm",
    "distance_circle_diameter_mm": "mark_circle_diameter_mm",
    "near_circle_below_cross_mm": "below_cross_mm",
    "near_circle_diameter_mm": "mark_circle_diameter_mm",
    "near_inset_mm": "near_inset_mm",
    "least_fitting_height_mm": "least_fitting_height_mm",
    "least_above_cross_mm": "above_cross_mm",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A mark of a progressive, or its middle.

    name: one of `MARKS`.
    in_mm, up_mm: inwards and upwards from a point that whoever gives the mark names [mm].
    diameter_mm: of a circle [mm]; 0 for a point.
    """

    name: str
    in_mm: float
    up_mm: float
    diameter_mm: float = 0.0

    def moved(self, *, in_mm: float, up_mm: float) -> "Mark":
        """Return the mark counted from another point.

        in_mm, up_mm: where the point it is counted from now lies from the other one [mm].
        """
        return Mark(
            name=self.name,
            in_mm=self.in_mm + in_mm,
            up_mm=self.up_mm + up_mm,
            diameter_mm=self.diameter_mm,
        )

    def x_mm(self, eye: Eye) -> float:
        """Return how far the mark lies to the observer's right [mm].

        eye: whose lens it is on.
        """
        return eye.nasal_sign * self.in_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class ProgressiveDesign:
    """A progressive design by its maker's chart; all distances count from the fitting cross.

    engravings_apart_mm: from engraving to engraving [mm].
    engraving_below_cross_mm: their level below the cross [mm].
    prism_point_below_cross_mm: prism reference point, straight below the cross [mm]; None: on the level of
        the engravings.
    distance_circle_above_cross_mm: middle of the distance circle [mm].
    distance_circle_diameter_mm, near_circle_diameter_mm: [mm].
    near_circle_below_cross_mm: middle of the near circle [mm].
    near_inset_mm: the same, inwards [mm].
    least_fitting_height_mm: least height of the cross above the lowest tangent [mm].
    least_above_cross_mm: least room between the cross and the highest tangent [mm].
    addition_on: the surface the addition is on, "front" or "back".
    words: as it is called.

    Raises LabError for a number no chart has, or an order of marks that cannot be.
    """

    engravings_apart_mm: float = 34.0
    engraving_below_cross_mm: float = 4.0
    prism_point_below_cross_mm: float | None = None
    distance_circle_above_cross_mm: float = 4.0
    distance_circle_diameter_mm: float = 8.0
    near_circle_below_cross_mm: float = 14.0
    near_circle_diameter_mm: float = 8.0
    near_inset_mm: float = 2.5
    least_fitting_height_mm: float = 18.0
    least_above_cross_mm: float = 10.0
    addition_on: str = "front"
    words: str = "progressive"

    def __post_init__(self) -> None:
        if self.prism_point_below_cross_mm is None:
            object.__setattr__(self, "prism_point_below_cross_mm", self.engraving_below_cross_mm)
        for name, limits in _LIMITS.items():
            require_in_limits(name, getattr(self, name), limits)
        require_one_of("addition_on", self.addition_on, ADDITION_SIDES)
        if self.near_circle_below_cross_mm <= self.engraving_below_cross_mm:
            raise LabError(
                f"near circle {self.near_circle_below_cross_mm:g} mm below the cross is not below the "
                f"engravings, {self.engraving_below_cross_mm:g} mm: check both against the maker's chart"
            )
        if self.near_circle_below_cross_mm >= self.least_fitting_height_mm:
            raise LabError(
                f"near circle {self.near_circle_below_cross_mm:g} mm below the cross lies outside a lens of "
                f"the least fitting height, {self.least_fitting_height_mm:g} mm: check the maker's chart"
            )

    def marks(self) -> tuple[Mark, ...]:
        """Return every mark, inwards and upwards from the fitting cross."""
        level, half = -self.engraving_below_cross_mm, self.engravings_apart_mm / 2.0
        return (
            Mark(name=FITTING_CROSS, in_mm=0.0, up_mm=0.0),
            Mark(name=PRISM_POINT, in_mm=0.0, up_mm=-self.prism_point_below_cross_mm),
            Mark(name=NASAL_ENGRAVING, in_mm=half, up_mm=level),
            Mark(name=TEMPORAL_ENGRAVING, in_mm=-half, up_mm=level),
            Mark(
                name=DISTANCE_CIRCLE,
                in_mm=0.0,
                up_mm=self.distance_circle_above_cross_mm,
                diameter_mm=self.distance_circle_diameter_mm,
            ),
            Mark(
                name=NEAR_CIRCLE,
                in_mm=self.near_inset_mm,
                up_mm=-self.near_circle_below_cross_mm,
                diameter_mm=self.near_circle_diameter_mm,
            ),
        )

    def marks_from_engravings(self) -> tuple[Mark, ...]:
        """Return every mark, inwards and upwards from midway between the engravings."""
        return tuple(mark.moved(in_mm=0.0, up_mm=self.engraving_below_cross_mm) for mark in self.marks())


def named(marks: tuple[Mark, ...], name: str) -> Mark:
    """Return one of several marks by its name.

    marks: to choose from; name: one of `MARKS`.

    Raises LabError with the names there are.
    """
    require_one_of("mark", name, tuple(mark.name for mark in marks))
    return next(mark for mark in marks if mark.name == name)


def progressive_names() -> tuple[str, ...]:
    """Return the names of the invented charts."""
    return tuple(_table()["design"])


def progressive(name: str) -> ProgressiveDesign:
    """Return a design of the invented charts by its name.

    name: of the table progressives.toml, for example "general".

    Raises LabError with the names there are.
    """
    return ProgressiveDesign(
        **_table()["design"][require_one_of("progressive design", name, progressive_names())]
    )


def progressive_source() -> str:
    """Return where the numbers of the charts come from, as a learner reads it."""
    return _table()["source"]["text"]


def _table() -> dict:
    return read_table("lablib.optics", "progressives.toml")
