"""One lens of a job, worked from its order: where it sits, what it is, and how thick its edge comes out."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from lablib.bench.margin import CutResult
from lablib.bench.profile import BenchProfile
from lablib.bench.slipping import Simulation, simulate
from lablib.errors import LabError
from lablib.inspection.axis import axis_limit_deg
from lablib.job.bench_step import cut_lens
from lablib.job.multifocal_sheet import MultifocalLayout, multifocal_layout
from lablib.job.ticket import EyeOrder, Ticket
from lablib.optics.eye import Eye
from lablib.optics.frame import POINTS, Frame, Outline, unit_circle
from lablib.optics.layout import (
    blank_allowance_mm,
    decentration_mm,
    minimum_blank_mm,
    minimum_blank_rule_mm,
)
from lablib.optics.lens import Lens, lens_for, lens_with_least_thickness
from lablib.optics.section import Section, section
from lablib.optics.solid import FinishedLens

# Edges that differ by less than this are equal, or rounding errors would choose between the halves of a
# symmetrical lens.
_TIE_DECIMALS = 6
# So near its outline nothing can be told of a lens by halves of a degree.
_CENTRE_INSIDE_MM = 0.1


@dataclass(frozen=True, kw_only=True, eq=False)
class EyeSheet:
    """One lens of a job, worked.

    ticket: the job.
    order: what was ordered for this eye.
    in_mm, up_mm: centration point from the boxed centre, nasally and up [mm].
    outline: of the finished lens.
    finished: the lens in its outline; None while the prescription is held.
    profile: of the bench it is cut on; None: the table's numbers.
    """

    ticket: Ticket
    order: EyeOrder
    in_mm: float
    up_mm: float
    outline: Outline
    finished: FinishedLens | None
    profile: BenchProfile | None = None

    @property
    def eye(self) -> Eye:
        """Which eye."""
        return self.order.eye

    @property
    def frame(self) -> Frame:
        """The frame of the pair."""
        return self.ticket.frame

    @cached_property
    def cut(self) -> CutResult | None:
        """What happens on the bench; None while held, where the blank falls short or cutting is not known.

        Worked only when asked for, so that a picture of the lens alone does not wait for it. Raises LabError
        for a lens that cannot be cut so.
        """
        if self.finished is None or not self.blank_reaches:
            return None
        return cut_lens(self.ticket, self.order, self.finished, self.profile)

    @cached_property
    def simulation(self) -> Simulation | None:
        """The cut with the lens free to turn on its block; None where there is no cut to work.

        Raises LabError for a lens that cannot be cut so, and where only a margin can be given.
        """
        return None if self.cut is None else simulate(self.cut)

    @cached_property
    def multifocal(self) -> MultifocalLayout | None:
        """The layout of its segment or progressive; None for single vision, or while a distance is missing.

        Raises LabError for a distance or a height that cannot be.
        """
        return multifocal_layout(self.frame, self.order)

    @property
    def axis_tolerance_deg(self) -> float | None:
        """How far the axis may be off either way [degrees]; None for a sphere and a held prescription."""
        rx = self.order.prescription
        return None if rx is None else axis_limit_deg(rx.cylinder_d)

    @property
    def centre_x_mm(self) -> float:
        """The optical centre to the observer's right of the boxed centre [mm]."""
        return self.eye.nasal_sign * self.in_mm

    @cached_property
    def minimum_blank_mm(self) -> float:
        """Diameter of the least blank that covers the outline, allowance included [mm]."""
        return minimum_blank_mm(self.outline, x_mm=self.centre_x_mm, y_mm=self.up_mm)

    @cached_property
    def minimum_blank_rule_mm(self) -> float:
        """The same by the rule of thumb [mm]."""
        return minimum_blank_rule_mm(self.outline.effective_diameter_mm, self.in_mm)

    @property
    def blank_covers(self) -> bool:
        """Whether the blank ordered is as large as the least blank."""
        return self.order.lens.blank_diameter_mm >= self.minimum_blank_mm

    @property
    def blank_reaches(self) -> bool:
        """Whether the blank reaches the outline all round, be it without the allowance."""
        return self.order.lens.blank_diameter_mm >= self.minimum_blank_mm - blank_allowance_mm()

    @property
    def nasal_deg(self) -> float:
        """The direction of the nose from the boxed centre [degrees]."""
        return 0.0 if self.eye is Eye.RIGHT else 180.0

    @cached_property
    def greatest_at(self) -> int:
        """Which point of the outline has the thickest edge; of equal ones the first."""
        return int(np.argmax(np.round(self.finished.edge_mm, _TIE_DECIMALS)))

    @cached_property
    def least_at(self) -> int:
        """Which point of the outline has the thinnest edge; of equal ones the first."""
        return int(np.argmin(np.round(self.finished.edge_mm, _TIE_DECIMALS)))

    @property
    def from_nasal(self) -> np.ndarray:
        """Shape (N,), the points of the outline in the order nasal, top, temporal, bottom."""
        points = np.arange(self.outline.radius_mm.size)
        return points if self.eye is Eye.RIGHT else (points.size // 2 - points) % points.size

    @cached_property
    def beyond_blank_mm(self) -> np.ndarray:
        """Shape (N,), how far the outline lies beyond the usable blank, 0 or less where it is covered."""
        usable = self.order.lens.blank_diameter_mm - blank_allowance_mm()
        x, y = self.outline.x_mm - self.centre_x_mm, self.outline.y_mm - self.up_mm
        return np.hypot(x, y) - usable / 2.0

    @property
    def midline_thickness_mm(self) -> float:
        """Thickness on the horizontal midline straight above or below the optical centre [mm]."""
        return float(self.finished.thickness_mm(np.array(self.centre_x_mm), np.array(0.0)))

    @cached_property
    def horizontal_section(self) -> Section:
        """The lens cut along the horizontal midline, from the boxed centre."""
        return self._section(0.0, 0.0, 0.0)

    @property
    def thickest_meridian_deg(self) -> float:
        """Direction of the thickest edge as seen from the optical centre [degrees]."""
        x, y = self.outline.x_mm[self.greatest_at], self.outline.y_mm[self.greatest_at]
        return float(np.degrees(np.arctan2(y - self.up_mm, x - self.centre_x_mm))) % 360.0

    @cached_property
    def thickest_section(self) -> Section:
        """The lens cut through the optical centre and its thickest edge, which lies at the end."""
        return self._section(self.centre_x_mm, self.up_mm, self.thickest_meridian_deg)

    def _section(self, x_mm: float, y_mm: float, direction_deg: float) -> Section:
        return section(
            self.finished,
            blank_diameter_mm=self.order.lens.blank_diameter_mm,
            x_mm=x_mm,
            y_mm=y_mm,
            direction_deg=direction_deg,
        )


def work_eye(ticket: Ticket, order: EyeOrder, profile: BenchProfile | None = None) -> EyeSheet:
    """Work one lens of a ticket.

    ticket: the job; order: one of its eyes; profile: of the bench it is cut on; None: the table's numbers.

    Raises LabError for an order that no lens can fill.
    """
    inward, up = decentration_mm(
        ticket.frame, monocular_pd_mm=order.monocular_pd_mm, height_mm=order.height_mm
    )
    outline = ticket.frame.outline(order.eye)
    x = order.eye.nasal_sign * inward
    _require_inside(outline, x, up)
    finished = None
    if order.prescription is not None and not order.holds:
        finished = FinishedLens(
            lens=_lens(order, outline, x, up), outline=outline, centre_x_mm=x, centre_y_mm=up
        )
    return EyeSheet(
        ticket=ticket,
        order=order,
        in_mm=inward,
        up_mm=up,
        outline=outline,
        finished=finished,
        profile=profile,
    )


def _require_inside(outline: Outline, x: float, y: float) -> None:
    """Refuse a centration point in a corner of the box, outside the lens: no section leads through it."""
    points = outline.radius_mm.size
    at = round(float(np.degrees(np.arctan2(y, x))) / 360.0 * points) % points
    if np.hypot(x, y) > outline.radius_mm[at] - _CENTRE_INSIDE_MM:
        raise LabError(
            f"optical centre {abs(x):g} mm beside and {abs(y):g} mm {'above' if y > 0 else 'below'} the "
            f"boxed centre lies outside the outline: check height_mm, monocular_pd_mm and the frame"
        )


def _lens(order: EyeOrder, outline: Outline, x: float, y: float) -> Lens:
    """The lens by its centre thickness, or by the least edge at its outline or, in stock, its blank's rim."""
    ordered = order.lens
    prism_in, prism_up = order.prism_in_up
    wanted = {
        "index": ordered.material.index,
        "front_curve_d": ordered.front_surface_d,
        "prism_x_prism_d": order.eye.nasal_sign * prism_in,
        "prism_y_prism_d": prism_up,
    }
    if ordered.centre_thickness_mm is not None:
        return lens_for(order.prescription, centre_thickness_mm=ordered.centre_thickness_mm, **wanted)
    if ordered.supply == "stock":
        cosine, sine = unit_circle(POINTS)
        rim_x, rim_y = (ordered.blank_diameter_mm / 2.0 * part for part in (cosine, sine))
    else:
        rim_x, rim_y = outline.x_mm - x, outline.y_mm - y
    return lens_with_least_thickness(
        order.prescription, least_mm=ordered.least_edge_mm, x_mm=rim_x, y_mm=rim_y, **wanted
    )
