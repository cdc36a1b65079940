"""What a lens that turned on its block shows afterwards, from its turn, its outline and its heat."""

import math

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


def heat_rise_k(result: CutResult, *, heat_j: float, sliding_s: float) -> float:
    """Return by how much the sliding face warms where both faces rub, at the edge of the smaller one [K].

    result: of `work_cut`; heat_j: work of sliding [J]; sliding_s: its duration [s].

    The work splits between the faces as their torques do and, on each, grows with the distance from the
    axis; it warms the lens as deep as heat reaches in the time, at most through (derived).
    """
    held, bench = result.holding, result.bench
    if sliding_s == 0.0:
        return 0.0
    block_mm = max(held.contact.half_width_mm, held.contact.half_height_mm)
    tip = Annulus(radius_mm=bench.tip_radius_mm)
    edge_mm = min(block_mm, tip.radius_mm) if held.back_nmm else block_mm
    per_mm3 = held.front_nmm / held.contact.w_mm3 + held.back_nmm / tip.w_mm3
    areal = heat_j * edge_mm * per_mm3 / held.torque_nmm
    reach_mm = default("heat_reach_mm_per_root_s") * math.sqrt(sliding_s)
    depth = min(result.lens.centre_thickness_mm, reach_mm)
    return areal / (default("heat_per_volume_j_per_mm3_k") * depth)
