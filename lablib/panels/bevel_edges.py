"""The lens of the bevel panel: its order, its edge, and what is cut into it, ready to be drawn."""

from dataclasses import dataclass

import numpy as np

from lablib.bench.bevel import Edge
from lablib.bench.bevel_choice import BevelChoice, TriedBevel, choose_bevel
from lablib.bench.edges import edge_default, least_edge_mm
from lablib.bench.groove import Groove, Hole, chamfer_leg_mm
from lablib.job.edge_findings import edge_of
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.ticket import EyeOrder, LensOrder, Ticket
from lablib.optics.care import Care, care
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.material import material
from lablib.optics.prescription import Prescription
from lablib.optics.section import section
from lablib.panels.lens_ticket import CENTRE
from lablib.panels.panel import Values
from lablib.pictures.bevel_data import EdgeAcross, EdgeView

A_MM, B_MM, DBL_MM, PD_MM = 52.0, 36.0, 18.0, 32.0
_BLANK_MM = 80.0
# Where the panel's hole is drilled, from the outline to its middle [mm].
HOLE_IN_MM = 3.0
# So much of the lens is drawn inside the outline [mm].
_DRAWN_MM, _POINTS = 11.0, 56
FIRST = "first that holds"
WAYS = {
    "following the front": "front",
    "following the rim": "rim",
    "one third forward": "forward",
    "middle of the edge": "middle",
}
BEVEL, GROOVE, HOLES = "bevel", "groove", "holes"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgeSheet(EdgeView):
    """A lens in its frame.

    edge: all round.
    rim_curve_d: of the rim, for index 1.530 [D].
    asked: how the bevel is to run, `FIRST` or a key of `WAYS`.
    choice: every bevel tried; None where there is none.
    shown: the bevel that is drawn; None where there is none.
    groove: at the thinnest place; None where there is none.
    hole: at the place that is shown; None where there is none.
    care: what the material bears.
    """

    edge: Edge
    rim_curve_d: float
    asked: str
    choice: BevelChoice | None
    shown: TriedBevel | None
    groove: Groove | None
    hole: Hole | None
    care: Care

    @property
    def hole_faults(self) -> tuple[str, ...]:
        """What speaks against the hole."""
        return self.hole.faults(self.edge.radius_mm, bears_holes=self.care.holes)


def edge_sheet(values: Values) -> EdgeSheet:
    """Return a lens in its frame.

    values: by the control's name.

    Raises LabError where no lens can be made so, or the rim does not reach its outline.
    """
    sheet = _lens(values)
    edge = edge_of(sheet)
    mounting = values["mounting"]
    choice = shown = line = rim = None
    if mounting == BEVEL:
        choice = choose_bevel(edge, rim=values["rim"], rim_curve_d=values["rim_curve_d"])
        shown = _shown(choice, values["way"])
        line, rim = shown.line.from_front_mm, _rim_mm(shown, values["rim_curve_d"])
    elif mounting == GROOVE:
        line = edge.thickness_mm / 2.0
    kind = {BEVEL: values["rim"], GROOVE: "grooved", HOLES: "drilled"}[mounting]
    at = _point(sheet, values["place_deg"])
    return EdgeSheet(
        mounting=mounting,
        rim=values["rim"],
        place_deg=values["place_deg"],
        round_deg=np.linspace(0.0, 360.0, edge.thickness_mm.size + 1),
        edge_mm=_unrolled(sheet, edge.thickness_mm),
        line_mm=_unrolled(sheet, line),
        rim_mm=_unrolled(sheet, rim),
        at_hole_mm=_unrolled(sheet, _at_holes_mm(sheet)) if mounting == HOLES else None,
        limit_mm=least_edge_mm(kind) / (1.0 if mounting == HOLES else 2.0),
        across=_across(sheet, at),
        edge=edge,
        rim_curve_d=values["rim_curve_d"],
        asked=values["way"],
        choice=choice,
        shown=shown,
        groove=Groove(edge_mm=float(edge.thickness_mm.min())) if mounting == GROOVE else None,
        hole=_hole(sheet, at) if mounting == HOLES else None,
        care=care(values["material"]),
    )


def _lens(values: Values) -> EyeSheet:
    given = "centre_thickness_mm" if values["thickness_at"] == CENTRE else "least_edge_mm"
    lens = LensOrder(
        material=material(values["material"]),
        front_curve_measured_d=values["front_curve_d"],
        blank_diameter_mm=_BLANK_MM,
        **{given: values["thickness_mm"]},
    )
    order = EyeOrder(
        eye=Eye.RIGHT,
        prescription=Prescription(sphere_d=values["sphere_d"]),
        monocular_pd_mm=PD_MM,
        lens=lens,
    )
    ticket = Ticket(
        number="from the bevel panel", frame=Frame(a_mm=A_MM, b_mm=B_MM, dbl_mm=DBL_MM), right=order
    )
    return work_eye(ticket, order)


def _shown(choice: BevelChoice, way: str) -> TriedBevel:
    """The bevel asked for; where none holds, the one on the rim's curve: it shows where the edge is short."""
    if way == FIRST and choice.chosen is not None:
        return choice.chosen
    name = "rim" if way == FIRST else WAYS[way]
    return next(one for one in choice.tried if one.line.name == name)


def _rim_mm(shown: TriedBevel, rim_curve_d: float) -> np.ndarray:
    """The rim, not bent: as far in front of the bevel at one place as behind it at another."""
    apart = shown.line.edge.rim_apart_mm(rim_curve_d)
    off = shown.line.from_front_mm - apart
    return apart + float(off.max() + off.min()) / 2.0


def _unrolled(sheet: EyeSheet, values: np.ndarray | None) -> np.ndarray | None:
    if values is None:
        return None
    turned = values[sheet.from_nasal]
    return np.append(turned, turned[0])


def _point(sheet: EyeSheet, place_deg: float) -> int:
    """Which point of the outline lies nearest to a place."""
    points = sheet.from_nasal
    return int(points[round(place_deg / 360.0 * points.size) % points.size])


def _across(sheet: EyeSheet, at: int) -> EdgeAcross:
    """The lens cut from its middle out to one point of the outline."""
    cut = section(
        sheet.finished,
        blank_diameter_mm=_BLANK_MM,
        x_mm=0.0,
        y_mm=0.0,
        direction_deg=float(sheet.outline.angle_deg[at]),
    )
    end = float(cut.along_mm[-1])
    along = np.linspace(max(end - _DRAWN_MM, float(cut.along_mm[0])), end, _POINTS)
    front, back = (np.interp(along, cut.along_mm, part) for part in (cut.front_mm, cut.back_mm))
    return EdgeAcross(
        along_mm=along - end,
        front_mm=front - front[-1],
        back_mm=back - front[-1],
        deep_mm=edge_default("rim_groove_depth_mm"),
        groove_mm=edge_default("cord_groove_mm"),
        chamfer_mm=chamfer_leg_mm(),
        hole_in_mm=HOLE_IN_MM,
        hole_mm=edge_default("hole_diameter_mm"),
    )


def _hole(sheet: EyeSheet, at: int) -> Hole:
    x, y = _hole_places_mm(sheet)
    return Hole(x_mm=float(x[at]), y_mm=float(y[at]), thickness_mm=float(_at_holes_mm(sheet)[at]))


def _hole_places_mm(sheet: EyeSheet) -> np.ndarray:
    """Where a hole would go at each place of the outline: x and y from its middle, shape (2, N) [mm]."""
    angle = np.radians(sheet.outline.angle_deg)
    return (sheet.outline.radius_mm - HOLE_IN_MM) * np.stack([np.cos(angle), np.sin(angle)])


def _at_holes_mm(sheet: EyeSheet) -> np.ndarray:
    """Thickness of the lens where a hole would go, at each place of the outline, shape (N,) [mm]."""
    return sheet.finished.thickness_mm(*_hole_places_mm(sheet))
