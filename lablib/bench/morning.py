"""The morning's test lens: what its axis and its two sizes say about the machine, and what to set.

That a lens is cut each morning and read for axis and size is common practice; the limits are the table's.
"""

from dataclasses import dataclass

from lablib.bench.geometry import on_a_line_deg
from lablib.bench.parameter import default
from lablib.errors import require_between, require_finite

# Sizes of a test lens that anybody cuts [mm].
_SIZES_MM = (10.0, 80.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class MorningLens:
    """A test lens as it was set and as it was read.

    axis_set_deg, axis_read_deg: axis, anticlockwise as the lens is read in its frame [degrees].
    width_set_mm, width_read_mm: width of the outline [mm]; height_set_mm, height_read_mm: its height [mm].

    Raises LabError for a number that no test lens has.
    """

    axis_set_deg: float
    axis_read_deg: float
    width_set_mm: float
    width_read_mm: float
    height_set_mm: float
    height_read_mm: float

    def __post_init__(self) -> None:
        for name in ("axis_set_deg", "axis_read_deg"):
            require_finite(name, getattr(self, name), unit="degrees")
        for name in ("width_set_mm", "width_read_mm", "height_set_mm", "height_read_mm"):
            require_between(name, getattr(self, name), low=_SIZES_MM[0], high=_SIZES_MM[1], unit="mm")

    @property
    def axis_off_deg(self) -> float:
        """How far the axis came out anticlockwise of its setting, above -90 and up to 90 [degrees]."""
        return _even(on_a_line_deg(self.axis_read_deg - self.axis_set_deg))

    @property
    def width_off_mm(self) -> float:
        """How much too wide the lens came out [mm]."""
        return _even(self.width_read_mm - self.width_set_mm)

    @property
    def height_off_mm(self) -> float:
        """How much too high the lens came out [mm]."""
        return _even(self.height_read_mm - self.height_set_mm)

    @property
    def size_off_mm(self) -> float:
        """How much too large the lens came out, the mean of both ways [mm]."""
        return _even((self.width_off_mm + self.height_off_mm) / 2.0)

    @property
    def shape_off_mm(self) -> float:
        """How much more it is off in width than in height [mm]."""
        return _even(self.width_off_mm - self.height_off_mm)

    @property
    def adjust(self) -> tuple[str, ...]:
        """What is to be set right, names of `adjustments`; nothing where the machine is in order."""
        offs = {
            "axis": (self.axis_off_deg, "test_axis_deg"),
            "size": (self.size_off_mm, "test_size_mm"),
            "shape": (self.shape_off_mm, "test_size_mm"),
        }
        return tuple(name for name, (off, bound) in offs.items() if abs(off) > default(bound))


def adjustments() -> dict[str, str]:
    """Return what may be set right after a test lens, by name, and what to do about it."""
    return {
        "axis": "turn the machine's axis setting back by what the lens is off, and cut another",
        "size": "change the size setting by what the lens is off, the other way, and cut another",
        "shape": "off by different amounts in width and height: no size setting cures that; "
        "look at tracer, chuck and head, and call whoever looks after the machine",
    }


def _even(value: float) -> float:
    """Readings are written to hundredths; what lies below is the rounding of a difference."""
    return round(value, 6) + 0.0
