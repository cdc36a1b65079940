"""Lens form from two spheres of given power: how thick the edge is, and which centre leaves it."""

from lablib.optics.lens import Lens
from lablib.optics.limits import require_in_limits
from lablib.optics.surface import Surface, curvature_per_mm


def edge_of_surfaces_mm(
    front_d: float, back_d: float, *, index: float, centre_thickness_mm: float, away_mm: float
) -> float:
    """Return the thickness at a distance from the optical centre, below 0 where the surfaces cross [mm].

    front_d, back_d: surface powers [D]; the back of a meniscus has a minus power.
    index: refractive index.
    centre_thickness_mm: [mm].
    away_mm: the distance [mm].

    Raises LabError for a thickness no lens has, and SurfaceTooSteep where a surface does not reach so far.
    """
    front, back = curvature_per_mm(front_d, index), curvature_per_mm(-back_d, index)
    lens = Lens(
        front=Surface(flat_per_mm=front, steep_per_mm=front),
        back=Surface(flat_per_mm=back, steep_per_mm=back),
        centre_thickness_mm=centre_thickness_mm,
        index=index,
    )
    return float(lens.thickness_mm(away_mm, 0.0))


def centre_for_edge_mm(
    front_d: float, back_d: float, *, index: float, edge_mm: float, away_mm: float
) -> float:
    """Return the centre thickness that leaves so much at a distance from the optical centre [mm].

    front_d, back_d, index, away_mm: as in `edge_of_surfaces_mm`.
    edge_mm: the thickness to be left there [mm].

    It is below 0 for a minus lens whose edge would be thicker than that even with no centre left.
    Raises LabError for an edge no lens has, and SurfaceTooSteep where a surface does not reach so far.
    """
    require_in_limits("edge", edge_mm, "least_edge_mm")
    # Surfaces of given power do not change with the thickness: any centre shows how much the edge loses.
    trial = edge_of_surfaces_mm(front_d, back_d, index=index, centre_thickness_mm=edge_mm, away_mm=away_mm)
    return 2.0 * edge_mm - trial
