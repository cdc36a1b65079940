"""How warm the wheel makes the rim it has just cut, dry and wet: a teaching estimate of its size."""

import numpy as np

from lablib.bench.cut_time import step_energy_j
from lablib.bench.margin import CutResult
from lablib.bench.parameter import default


def heat_share(result: CutResult) -> np.ndarray:
    """Return the share of the wheel's work that stays in the rim, shape (turns, 1).

    result: of `work_cut`; finishing is wet.
    """
    bench, water = result.bench, result.setup.water
    roughed = result.material.roughed if water == "manual" else water
    rough = bench.edge_heat_share_dry if roughed == "dry" else bench.edge_heat_share_wet
    return np.where(result.cutting.plan.finishing, bench.edge_heat_share_wet, rough)[:, None]


def heated_depth_mm(lens_speed_rpm: float) -> float:
    """Return how deep heat reaches into the rim during one turn [mm].

    lens_speed_rpm: [rpm].
    """
    return default("heat_reach_mm_per_root_s") * float(np.sqrt(60.0 / lens_speed_rpm))


def edge_rise_k(result: CutResult) -> np.ndarray:
    """Return by how much the rim has warmed when it comes round again, shape (turns, N) [K].

    result: of `work_cut`. Of one pass alone: the next bite takes most of it away.
    """
    cutting = result.cutting
    rim, points = cutting.plan.radius_mm[1:], cutting.pace.shape[1]
    # Along the rim a step is as much longer than across the radius as the radius leans from the normal.
    length = rim**2 / cutting.touch.support_mm * (2.0 * np.pi / points)
    area = length * np.maximum(cutting.thickness_mm, heated_depth_mm(result.bench.lens_speed_rpm))
    areal = heat_share(result) * step_energy_j(result) / area
    depth = heated_depth_mm(result.bench.lens_speed_rpm)
    return areal / (default("heat_per_volume_j_per_mm3_k") * depth)
