"""Lens form as workings to follow by hand: edge and centre from two surfaces, and a rule for the front curve.

Every value comes from the function that computes it elsewhere; here only the steps are put in words.
"""

from lablib.optics.form import centre_for_edge_mm, edge_of_surfaces_mm
from lablib.optics.power_workings import spherical_equivalent_working
from lablib.optics.prescription import Prescription
from lablib.optics.surface_workings import radius_working, sagitta_working
from lablib.optics.thick_lens import vogel_front_curve_d
from lablib.working import Term, Working

_AXIAL = "geometry; thickness is measured along the axis"


def edge_of_surfaces_workings(
    front_d: float, back_d: float, *, index: float, centre_thickness_mm: float, away: Term, name: str
) -> tuple[Working, ...]:
    """Return the thickness at a distance from the optical centre.

    front_d, back_d, index, centre_thickness_mm: as in `edge_of_surfaces_mm`, which also says what it raises.
    away: the distance [mm].
    name: of the place in words, for example "temporal edge".
    """
    depths = _depth_workings(front_d, back_d, index, away)
    front, back = depths[-2:]
    centre = Term(symbol="t", value=centre_thickness_mm, unit="mm", meaning="centre thickness")
    edge = Working(
        what=name,
        symbol="e",
        formula="t + s_2 - s_1",
        terms=(centre, back.as_term(), front.as_term()),
        value=edge_of_surfaces_mm(
            front_d, back_d, index=index, centre_thickness_mm=centre_thickness_mm, away_mm=away.value
        ),
        unit="mm",
        source=_AXIAL,
    )
    return (*depths, edge)


def centre_for_edge_workings(
    front_d: float, back_d: float, *, index: float, edge_mm: float, away: Term
) -> tuple[Working, ...]:
    """Return the centre thickness that leaves so much at a distance from the optical centre.

    front_d, back_d, index, edge_mm: as in `centre_for_edge_mm`, which also says what it raises.
    away: the distance [mm].
    """
    depths = _depth_workings(front_d, back_d, index, away)
    front, back = depths[-2:]
    edge = Term(symbol="e", value=edge_mm, unit="mm", meaning="thickness to be left there")
    centre = Working(
        what="centre thickness",
        symbol="t",
        formula="e + s_1 - s_2",
        terms=(edge, front.as_term(), back.as_term()),
        value=centre_for_edge_mm(front_d, back_d, index=index, edge_mm=edge_mm, away_mm=away.value),
        unit="mm",
        source=_AXIAL,
    )
    return (*depths, centre)


def _depth_workings(front_d: float, back_d: float, index: float, away: Term) -> tuple[Working, ...]:
    """Radii of both surfaces, then front and back depth; a flat surface has no radius to work."""
    radii = (
        radius_working("front radius", front_d, index, is_back=False),
        radius_working("back radius", back_d, index, is_back=True),
    )
    depths = tuple(
        sagitta_working(f"depth of the {side} surface there", symbol, radius and radius.as_term(), away)
        for side, symbol, radius in zip(("front", "back"), ("s_1", "s_2"), radii, strict=True)
    )
    return (*(radius for radius in radii if radius), *depths)


def vogel_front_curve_workings(rx: Prescription) -> tuple[Working, ...]:
    """Return the front curve by Vogel's rule of thumb.

    rx: the prescription.
    """
    equivalent = spherical_equivalent_working(rx)
    curve = Working(
        what="front curve by Vogel's rule",
        symbol="F_1",
        formula="M + 6" if equivalent.value > 0.0 else "M / 2 + 6",
        terms=(equivalent.as_term(),),
        value=vogel_front_curve_d(equivalent.value),
        unit="D",
        source="Vogel's rule, from memory; other rules differ",
    )
    return equivalent, curve
