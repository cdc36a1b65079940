"""Benches drawn from the ranges of the table: what nobody has measured differs, what is set does not."""

from collections.abc import Mapping
from types import SimpleNamespace

import numpy as np

from lablib.bench.joints import gripped_coat
from lablib.bench.machine import Bench
from lablib.bench.margin import CutResult
from lablib.bench.parameter import Parameter, parameters

# Set at the machine or measured with a rule, so that nobody is in doubt about it.
SETTINGS = frozenset(
    {
        "wheel_diameter_mm",
        "wheel_speed_rpm",
        "lens_speed_rpm",
        "motor_power_w",
        "slowing_limit",
        "contact_window_deg",
        "finishing_stock_mm",
        "finishing_depth_mm",
        "clamp_force_n",
        "tip_radius_mm",
        "plate_factor",
        "scatter",
        "doubt",
        "sliding_share",
    }
)


def doubted(result: CutResult) -> dict[str, Parameter]:
    """Return what is drawn for a cut, by the names of the table: only what its setup uses.

    result: of `work_cut`.
    """
    setup, known = result.setup, parameters()
    names = [name for name in known if "." not in name and name in Bench.__dataclass_fields__]
    names = [name for name in names if name not in SETTINGS]
    rows = ("pad_shear_factor", "pad_friction", "back_friction")
    names += [f"coat.{gripped_coat(setup, result.bench).name}.{row}" for row in rows]
    names += [f"skin.{setup.skin}.{row}" for row in ("shear_factor", "friction_factor")]
    names += [f"wheel.{setup.wheel}.force_factor"]
    names += [f"material.{result.material.name}.{row}" for row in ("specific_energy_j_per_mm3", "kappa")]
    return {name: known[name] for name in names}


def worked_with(result: CutResult, rows: Mapping[str, Parameter]) -> dict[str, float]:
    """Return what a cut was worked with, by the names of the table.

    result: of `work_cut`; rows: the names.
    """
    bench, setup = result.bench, result.setup
    places = {
        "coat": gripped_coat(setup, bench),
        "skin": bench.skins[setup.skin],
        "material": result.material,
    }
    found = {}
    for name in rows:
        kind, own = name.partition(".")[0], name.rpartition(".")[2]
        found[name] = bench.wheels[setup.wheel] if kind == "wheel" else getattr(places.get(kind, bench), own)
    return found


def drawn_benches(result: CutResult, draws: int, seed: int) -> dict[str, np.ndarray]:
    """Return the values of each parameter on so many benches, shape (draws,) each.

    result: of `work_cut`; draws: number of benches; seed: the same gives the same benches.

    As often above as below what the cut was worked with, the nearer the likelier; distances are ratios.
    """
    rows, generator = doubted(result), np.random.default_rng(seed)
    drawn = {}
    for name, value in worked_with(result, rows).items():
        above, away = generator.random(draws) < 0.5, 1.0 - np.sqrt(generator.random(draws))
        drawn[name] = np.where(
            above, _towards(value, rows[name].high, away), _towards(value, rows[name].low, away)
        )
    return drawn


def _towards(value: float, end: float, away: np.ndarray) -> np.ndarray:
    """From a value towards one end of its range, by ratio where neither is 0."""
    return value * (end / value) ** away if value and end else value + away * (end - value)


def stand_in(result: CutResult, drawn: Mapping[str, np.ndarray]) -> SimpleNamespace:
    """Return all benches at once, for the functions of the bench to work with.

    result: of `work_cut`; drawn: values by name, shape (draws,) each. They become columns; what is set
        stays a number.
    """
    bench, setup = result.bench, result.setup
    grouped: dict[str, dict[str, np.ndarray]] = {}
    for name, values in drawn.items():
        kind, own = name.partition(".")[0] if "." in name else "", name.rpartition(".")[2]
        grouped.setdefault(kind, {})[own] = values[:, None]
    coat = SimpleNamespace(**grouped["coat"])
    settings = {name: getattr(bench, name) for name in SETTINGS}
    return SimpleNamespace(
        **settings,
        **grouped[""],
        coats={gripped_coat(setup, bench).name: coat},
        skins={setup.skin: SimpleNamespace(**grouped["skin"])},
        wheel=grouped["wheel"]["force_factor"],
        material=SimpleNamespace(**grouped["material"]),
        surface_speed_m_per_s=bench.surface_speed_m_per_s,
    )
