"""A job ticket as a value object: what was ordered, before anything is computed."""

from dataclasses import dataclass
from pathlib import Path

from lablib.bench.machine import coat_names
from lablib.errors import LabError, require_finite, require_one_of
from lablib.job.bench_order import Blocking, Cut
from lablib.job.multifocal_order import SINGLE_VISION, Multifocal, SegmentOrder, require_design
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.limits import require_in_limits as require_optical
from lablib.optics.material import Material
from lablib.optics.prescription import Prescription
from lablib.optics.prism import Prism, together
from lablib.optics.segment_layout import segment_inset_mm
from lablib.optics.surface import power_from_lens_measure_d
from lablib.optics.unclear import BaseMissing

SUPPLIES = ("surfaced", "stock")
COATS = coat_names()


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """A question that must be answered before this job goes on.

    name: a stable name, for programs.
    question: what to ask, in words.
    eye: which lens it is about, None for the pair.
    """

    name: str
    question: str
    eye: Eye | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LensOrder:
    """One lens as ordered.

    design: one of `lablib.job.multifocal_order.DESIGNS`.
    material: what it is made of.
    front_curve_d: front surface power in this material [D]; or
    front_curve_measured_d: what a lens measure, engraved for 1.530, would show on it [D].
    centre_thickness_mm: [mm]; or
    least_edge_mm: the least edge, over the real outline, and for a stock lens at the blank's rim [mm].
    blank_diameter_mm: [mm].
    supply: "surfaced" or "stock".
    coat: "uncoated", "coated" or "slick".
    multifocal: segment or progressive chart, as the design needs it; None for single vision.

    Raises LabError for a word or number that cannot be, and where one of a pair is missing or both stand.
    """

    material: Material
    blank_diameter_mm: float
    front_curve_d: float | None = None
    front_curve_measured_d: float | None = None
    centre_thickness_mm: float | None = None
    least_edge_mm: float | None = None
    design: str = SINGLE_VISION
    supply: str = "surfaced"
    coat: str = "coated"
    multifocal: Multifocal | None = None

    def __post_init__(self) -> None:
        require_design(self.design, self.multifocal)
        require_one_of("supply", self.supply, SUPPLIES)
        require_one_of("coat", self.coat, COATS)
        require_optical("blank_diameter_mm", self.blank_diameter_mm, "blank_diameter_mm")
        _exactly_one(self, "front_curve_d", "front_curve_measured_d")
        _exactly_one(self, "centre_thickness_mm", "least_edge_mm")
        for name in ("centre_thickness_mm", "least_edge_mm"):
            if getattr(self, name) is not None:
                require_optical(name, getattr(self, name), name)
        for name in ("front_curve_d", "front_curve_measured_d"):
            if getattr(self, name) is not None:
                require_optical(name, getattr(self, name), "front_curve_d")

    @property
    def front_surface_d(self) -> float:
        """Front surface power in the lens's own material [D]."""
        if self.front_curve_d is not None:
            return self.front_curve_d
        return power_from_lens_measure_d(self.front_curve_measured_d, self.material.index)


def _exactly_one(order: LensOrder, first: str, second: str) -> None:
    given = [name for name in (first, second) if getattr(order, name) is not None]
    if len(given) != 1:
        got = "both are there" if given else "neither is there"
        raise LabError(f"{first} and {second}: {got}: give exactly one of the two")


@dataclass(frozen=True, slots=True, kw_only=True)
class EyeOrder:
    """What one eye is to have.

    eye: right or left.
    prescription: None where the ticket leaves it unclear; the hold then says what to ask.
    monocular_pd_mm: [mm].
    height_mm: centration point above the lowest tangent, the fitting cross of a progressive [mm]; None: on
        the horizontal midline.
    near_pd_mm: near distance of this eye, for a segment [mm]; None: not given.
    segment_height_mm: top of the segment above the lowest tangent [mm]; None: not given.
    prism: prescribed prisms, made by tilting the back surface.
    lens: the lens ordered for this eye.
    holds: questions about this eye.
    read_so: how doubtful writing was read, in words.

    Raises LabError for a distance no wearer has.
    """

    eye: Eye
    prescription: Prescription | None
    monocular_pd_mm: float
    lens: LensOrder
    height_mm: float | None = None
    near_pd_mm: float | None = None
    segment_height_mm: float | None = None
    prism: tuple[Prism, ...] = ()
    holds: tuple[Hold, ...] = ()
    read_so: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        require_optical("monocular_pd_mm", self.monocular_pd_mm, "monocular_pd_mm")
        if self.height_mm is not None:
            require_finite("height_mm", self.height_mm, unit="mm")
        if self.near_pd_mm is not None:
            segment_inset_mm(far_pd_mm=self.monocular_pd_mm, near_pd_mm=self.near_pd_mm)
        if self.segment_height_mm is not None:
            require_optical("segment_height_mm", self.segment_height_mm, "segment_height_mm")
        if not isinstance(self.lens.multifocal, SegmentOrder):
            self._refuse_segment_keys()

    def _refuse_segment_keys(self) -> None:
        for name in ("near_pd_mm", "segment_height_mm"):
            if getattr(self, name) is not None:
                raise LabError(
                    f"{name} {getattr(self, name):g} on a {self.lens.design} lens: only a lens with a "
                    "segment has it: take it off, or give the design"
                )

    @property
    def prism_held(self) -> bool:
        """Whether a prism on the ticket waits for an answer."""
        return any(hold.name == BaseMissing.name for hold in self.holds)

    @property
    def prism_in_up(self) -> tuple[float, float]:
        """All prescribed prism together, base in and base up [prism D]."""
        return together(self.prism, eye=self.eye)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wearer:
    """Distances from the back of the lens to the cornea.

    vertex_distance_mm: as the pair will be worn [mm]; None where it is not given.
    tested_vertex_distance_mm: as the eyes were tested [mm]; None where it is not given.

    Raises LabError for a distance no one wears.
    """

    vertex_distance_mm: float | None = None
    tested_vertex_distance_mm: float | None = None

    def __post_init__(self) -> None:
        for name in ("vertex_distance_mm", "tested_vertex_distance_mm"):
            if getattr(self, name) is not None:
                require_optical(name, getattr(self, name), "vertex_distance_mm")


@dataclass(frozen=True, slots=True, kw_only=True)
class Ticket:
    """A job as it was ordered.

    number: the job's number or name.
    frame, wearer, blocking, cut: for the pair.
    right, left: the eyes; None for an eye that gets no lens.
    note: what the dispenser wrote; it settles an order that looks odd but is meant.

    Raises LabError for a ticket with no eye on it.
    """

    number: str
    frame: Frame
    right: EyeOrder | None = None
    left: EyeOrder | None = None
    wearer: Wearer = Wearer()
    blocking: Blocking = Blocking()
    cut: Cut = Cut()
    note: str = ""

    def __post_init__(self) -> None:
        if self.right is None and self.left is None:
            raise LabError(f"ticket {self.number!r} has no lens on it: give [right], [left] or both")

    @property
    def eyes(self) -> tuple[EyeOrder, ...]:
        """The eyes that get a lens, right first."""
        return tuple(order for order in (self.right, self.left) if order is not None)

    @classmethod
    def read(cls, path: str | Path) -> "Ticket":
        """Read a ticket file.

        path: of a TOML file in format 1.

        Raises TicketFaults, with one line for each fault, when the ticket cannot be read.
        """
        from lablib.job.ticket_file import read_ticket

        return read_ticket(Path(path))
