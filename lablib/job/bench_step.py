"""The step from the lens to the bench: one ordered lens handed over as numbers, and its cut worked."""

from dataclasses import replace

import numpy as np

from lablib.bench.faces import LensFaces
from lablib.bench.geometry import outline_from
from lablib.bench.machine import LensMaterial, lens_material
from lablib.bench.margin import CutResult, work_cut
from lablib.bench.parameter import default
from lablib.bench.plan import UncutLens
from lablib.bench.profile import BenchProfile
from lablib.bench.setup import Setup
from lablib.job.ticket import Cut, EyeOrder, Ticket
from lablib.optics.lens import Lens
from lablib.optics.solid import FinishedLens

# Rings and spokes on which the thinnest place under the back tip is looked for.
_RINGS, _SPOKES = 9, 48
# Half the distance over which a slope is taken.
_SLOPE_MM = 0.05


def setup_for(ticket: Ticket, order: EyeOrder) -> Setup:
    """Return how one lens is set up on the bench, by its ticket.

    ticket: the job; order: one of its eyes.
    """
    return Setup(**ticket.blocking.chosen, **ticket.cut.chosen, coat=order.lens.coat)


def cutting_material(order: EyeOrder, cut: Cut) -> LensMaterial | None:
    """Return how the ordered material cuts, None where the ticket gives numbers and no `cuts_like`.

    order: one eye; cut: of its ticket, which may set the depth of a bite.

    Raises LabError for a depth this material is not cut at.
    """
    if order.lens.material.cuts_like is None:
        return None
    known = lens_material(order.lens.material.cuts_like)
    return known if cut.depth_per_turn_mm is None else replace(known, depth_per_turn_mm=cut.depth_per_turn_mm)


def cut_lens(
    ticket: Ticket, order: EyeOrder, finished: FinishedLens, profile: BenchProfile | None = None
) -> CutResult | None:
    """Work the cut of one lens whose blank reaches the outline; None where its cutting is not known.

    ticket: the job; order: one of its eyes; finished: its lens.
    profile: of the bench it is cut on; None: the table's numbers.

    Raises LabError for a blocking point the outline cannot be cut about, and where nothing is left to cut.
    """
    material = cutting_material(order, ticket.cut)
    if material is None:
        return None
    lens, setup = _uncut(ticket, order, finished), setup_for(ticket, order)
    if profile is None:
        return work_cut(lens, material=material, setup=setup)
    bench = profile.bench_for(setup, material)
    return work_cut(lens, material=profile.cuts(material), setup=setup, bench=bench)


def _uncut(ticket: Ticket, order: EyeOrder, finished: FinishedLens) -> UncutLens:
    """The lens as it sits on its block; on a single vision lens the fitting cross is the optical centre."""
    lens = finished.lens
    at_boxed_centre = ticket.blocking.blocking_point == "boxed centre"
    chuck_x, chuck_y = (0.0, 0.0) if at_boxed_centre else (finished.centre_x_mm, finished.centre_y_mm)
    centre_x, centre_y = finished.centre_x_mm - chuck_x, finished.centre_y_mm - chuck_y

    def thickness_mm(x_mm: np.ndarray, y_mm: np.ndarray) -> np.ndarray:
        return lens.thickness_or_nan_mm(x_mm - centre_x, y_mm - centre_y)

    outline = finished.outline.radius_mm
    return UncutLens(
        outline_mm=outline if at_boxed_centre else outline_from(outline, x_mm=chuck_x, y_mm=chuck_y),
        blank_diameter_mm=order.lens.blank_diameter_mm,
        blank_x_mm=centre_x,
        blank_y_mm=centre_y,
        thickness_mm=thickness_mm,
        centre_thickness_mm=_thinnest_under_tip_mm(finished, chuck_x, chuck_y),
        faces=_faces(lens, -centre_x, -centre_y),
    )


def _faces(lens: Lens, x_mm: float, y_mm: float) -> LensFaces:
    """Both surfaces at the chuck axis, given from the optical centre; the block sits square on the front."""
    reach = np.array([_SLOPE_MM, -_SLOPE_MM])
    along, up = (
        lens.thickness_mm(x_mm + reach, y_mm + 0.0 * reach),
        lens.thickness_mm(x_mm + 0.0 * reach, y_mm + reach),
    )
    return LensFaces(
        front_flat_per_mm=lens.front.flat_per_mm,
        front_steep_per_mm=lens.front.steep_per_mm,
        front_flat_deg=lens.front.flat_meridian_deg,
        back_flat_per_mm=lens.back.flat_per_mm,
        back_steep_per_mm=lens.back.steep_per_mm,
        back_flat_deg=lens.back.flat_meridian_deg,
        tilt_x=float(along[0] - along[1]) / (2.0 * _SLOPE_MM),
        tilt_y=float(up[0] - up[1]) / (2.0 * _SLOPE_MM),
    )


def _thinnest_under_tip_mm(finished: FinishedLens, chuck_x: float, chuck_y: float) -> float:
    """Thickness that bears the clamp: the least within the back tip's radius of the chuck axis."""
    reach = default("tip_radius_mm")
    ring = np.linspace(0.0, reach, _RINGS)[:, None]
    spoke = np.linspace(0.0, 2.0 * np.pi, _SPOKES, endpoint=False)
    x, y = chuck_x + ring * np.cos(spoke), chuck_y + ring * np.sin(spoke)
    least = float(finished.thickness_mm(x, y).min())
    away = float(np.hypot(finished.centre_x_mm - chuck_x, finished.centre_y_mm - chuck_y))
    return min(least, finished.lens.centre_thickness_mm) if away <= reach else least
