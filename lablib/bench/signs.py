"""What a lens that turned on its block shows afterwards, from its turn, its outline and its heat."""

import math
from dataclasses import dataclass

from lablib.bench.contact import Annulus
from lablib.bench.margin import CutResult
from lablib.bench.parameter import default

LINE_OFF_LEVEL = "line off level"
BUMPED_OUTLINE = "bumped outline"
BURNT_PATCH = "burnt patch"
NONE = "none"
# The one that tells most first: heat needs many turns, a bump a turn after cutting began, a line any turn.
SIGNS = (BURNT_PATCH, BUMPED_OUTLINE, LINE_OFF_LEVEL)


def signs_of(*, off_deg: float, shortfall_mm: float, rise_k: float) -> tuple[str, ...]:
    """Return the signs a finished lens shows, in the order of `SIGNS`.

    off_deg: a line across the lens against the block's [degrees].
    shortfall_mm: how far its rim lies inside the ordered outline [mm].
    rise_k: by how much the sliding face warmed [K].
    """
    shown = {
        BURNT_PATCH: rise_k >= default("burnt_rise_k"),
        BUMPED_OUTLINE: shortfall_mm >= default("bump_mm"),
        LINE_OFF_LEVEL: abs(off_deg) >= default("line_off_deg"),
    }
    return tuple(sign for sign in SIGNS if shown[sign])


@dataclass(frozen=True, slots=True, kw_only=True)
class Heat:
    """What sliding does to the face where both faces rub, at the edge of the smaller one.

    The work splits between the faces as their torques do and, on each, grows with the distance from the axis.
    It warms the lens as deep as heat reaches in the time, at most through (derived).

    edge_mm: from the chuck axis, s [mm].
    front_n_per_mm2, back_n_per_mm2: torque over W on each face [N/mm2].
    areal_j_per_mm2: heat on each square millimetre [J/mm2].
    depth_mm: of lens warmed [mm].
    rise_k: by how much [K].
    """

    edge_mm: float
    front_n_per_mm2: float
    back_n_per_mm2: float
    areal_j_per_mm2: float
    depth_mm: float
    rise_k: float


def sliding_heat(result: CutResult, *, heat_j: float, sliding_s: float) -> Heat:
    """Return what sliding does to the face, at its warmest.

    result: of `work_cut`; heat_j: work of sliding [J]; sliding_s: its duration, above 0 [s].
    """
    held = result.holding
    block_mm = max(held.contact.half_width_mm, held.contact.half_height_mm)
    tip = Annulus(radius_mm=result.bench.tip_radius_mm)
    edge_mm = min(block_mm, tip.radius_mm) if held.back_nmm else block_mm
    # Where block and lens have lifted off each other nothing rubs.
    rubs_mm3 = held.contact.w_mm3 * held.weakest.bearing.turning
    front, back = held.front_nmm / rubs_mm3, held.back_nmm / tip.w_mm3
    areal = heat_j * edge_mm * (front + back) / held.torque_nmm
    reach_mm = default("heat_reach_mm_per_root_s") * math.sqrt(sliding_s)
    depth = min(result.lens.centre_thickness_mm, reach_mm)
    return Heat(
        edge_mm=edge_mm,
        front_n_per_mm2=front,
        back_n_per_mm2=back,
        areal_j_per_mm2=areal,
        depth_mm=depth,
        rise_k=areal / (default("heat_per_volume_j_per_mm3_k") * depth),
    )
