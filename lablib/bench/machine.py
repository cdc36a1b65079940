"""The bench: its machine, its grip, and how a lens material cuts on it, each with the table's defaults."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from functools import cache
from types import MappingProxyType

from lablib.bench.parameter import default, require_parameter, table
from lablib.errors import require_one_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Coat:
    """How pad and back tip grip one kind of surface.

    name: of the surface in the table, for example "slick".
    pad_shear_factor: share of the pad's shear strength.
    pad_friction, back_friction: coefficients of friction of pad and back tip.

    Raises LabError for an unknown name or a number outside the table's range.
    """

    name: str
    pad_shear_factor: float
    pad_friction: float
    back_friction: float

    def __post_init__(self) -> None:
        require_one_of("coat", self.name, coat_names())
        _require_row("coat", self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Skin:
    """What lies on the lens, as shares of shear strength and friction that are left.

    name: in the table, for example "fingerprint".
    shear_factor, friction_factor: shares left.

    Raises LabError for an unknown name or a number outside the table's range.
    """

    name: str
    shear_factor: float
    friction_factor: float

    def __post_init__(self) -> None:
        require_one_of("skin", self.name, skin_names())
        _require_row("skin", self)


def _require_row(kind: str, row: Coat | Skin) -> None:
    for one in fields(row):
        if one.name != "name":
            require_parameter(f"{kind}.{row.name}.{one.name}", getattr(row, one.name))


def _rows(kind: str, make: type) -> Mapping:
    rows = table()[kind]
    return MappingProxyType(
        {name: make(name=name, **{key: one["default"] for key, one in rows[name].items()}) for name in rows}
    )


def _wheels() -> Mapping[str, float]:
    return MappingProxyType({name: default(f"wheel.{name}.force_factor") for name in wheel_names()})


def coat_names() -> tuple[str, ...]:
    """Return the kinds of surface, from the best grip to the worst."""
    return tuple(table()["coat"])


def skin_names() -> tuple[str, ...]:
    """Return what may lie on a lens, from clean to the worst."""
    return tuple(table()["skin"])


def wheel_names() -> tuple[str, ...]:
    """Return the conditions of the wheel, from sharp to the worst."""
    return tuple(table()["wheel"])


def _number(name: str) -> float:
    return field(default=default(name))


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """One machine and its grip; the table's defaults until the bench has been calibrated.

    Every number is a parameter of the table under the same name, where its words, range and source stand.
    coats, skins: grip by kind of surface and by what lies on it.
    wheels: factor on the cutting force by condition of the roughing wheel.

    Raises LabError for a number outside its range.
    """

    wheel_diameter_mm: float = _number("wheel_diameter_mm")
    wheel_speed_rpm: float = _number("wheel_speed_rpm")
    lens_speed_rpm: float = _number("lens_speed_rpm")
    motor_power_w: float = _number("motor_power_w")
    slowing_limit: float = _number("slowing_limit")
    contact_window_deg: float = _number("contact_window_deg")
    finishing_stock_mm: float = _number("finishing_stock_mm")
    finishing_depth_mm: float = _number("finishing_depth_mm")
    rubbing_n_per_mm: float = _number("rubbing_n_per_mm")
    dynamic_factor: float = _number("dynamic_factor")
    finishing_wheel_factor: float = _number("finishing_wheel_factor")
    clamp_force_n: float = _number("clamp_force_n")
    bending_share: float = _number("bending_share")
    allowed_stress_mpa: float = _number("allowed_stress_mpa")
    plate_factor: float = _number("plate_factor")
    tip_radius_mm: float = _number("tip_radius_mm")
    pad_shear_mpa: float = _number("pad_shear_mpa")
    core_shear_mpa: float = _number("core_shear_mpa")
    block_pad_shear_factor: float = _number("block_pad_shear_factor")
    block_pad_friction: float = _number("block_pad_friction")
    pad_film_shear_factor: float = _number("pad_film_shear_factor")
    pad_film_friction: float = _number("pad_film_friction")
    film_coat_shear_factor: float = _number("film_coat_shear_factor")
    film_coat_friction: float = _number("film_coat_friction")
    back_tape_friction: float = _number("back_tape_friction")
    usual_fit: float = _number("usual_fit")
    age_shear_loss_per_month: float = _number("age_shear_loss_per_month")
    age_shear_floor: float = _number("age_shear_floor")
    age_friction_loss_per_month: float = _number("age_friction_loss_per_month")
    age_friction_floor: float = _number("age_friction_floor")
    warmth_loss_per_degree: float = _number("warmth_loss_per_degree")
    scatter: float = _number("scatter")
    doubt: float = _number("doubt")
    sliding_share: float = _number("sliding_share")
    dry_for_wet_factor: float = _number("dry_for_wet_factor")
    wet_for_dry_factor: float = _number("wet_for_dry_factor")
    edge_heat_share_wet: float = _number("edge_heat_share_wet")
    edge_heat_share_dry: float = _number("edge_heat_share_dry")
    coats: Mapping[str, Coat] = field(default_factory=lambda: _rows("coat", Coat))
    skins: Mapping[str, Skin] = field(default_factory=lambda: _rows("skin", Skin))
    wheels: Mapping[str, float] = field(default_factory=_wheels)

    def __post_init__(self) -> None:
        for one in fields(self):
            if one.type is float:
                require_parameter(one.name, getattr(self, one.name))
        for name, factor in self.wheels.items():
            require_parameter(f"wheel.{require_one_of('wheel', name, wheel_names())}.force_factor", factor)

    @property
    def wheel_radius_mm(self) -> float:
        """Radius of the wheel [mm]."""
        return self.wheel_diameter_mm / 2.0

    @property
    def surface_speed_m_per_s(self) -> float:
        """Speed of the wheel's rim, v_s [m/s]."""
        return math.pi * self.wheel_diameter_mm * self.wheel_speed_rpm / 60_000.0

    @property
    def lens_speed_rad_per_s(self) -> float:
        """Speed of the lens, omega [radians/s]."""
        return 2.0 * math.pi * self.lens_speed_rpm / 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LensMaterial:
    """How a lens material cuts.

    name: of the material in the table.
    specific_energy_j_per_mm3: energy to remove a volume, u [J/mm3].
    kappa: tangential over normal cutting force.
    depth_per_turn_mm: depth of a roughing bite [mm].

    Raises LabError for an unknown name or a number outside the range of its kind, plastic or glass.
    """

    name: str
    specific_energy_j_per_mm3: float
    kappa: float
    depth_per_turn_mm: float

    def __post_init__(self) -> None:
        require_one_of("lens material", self.name, material_names())
        for one in fields(self):
            if one.name != "name":
                require_parameter(f"material.{self.name}.{one.name}", getattr(self, one.name))

    @property
    def roughed(self) -> str:
        """How the material is made to be roughed, "wet" or "dry"."""
        return table()["material"][self.name].get("roughed", "wet")

    @property
    def wheel_kind(self) -> str:
        """Which wheels it is cut on, for "plastics" or for "glass"; the two are never exchanged."""
        return "glass" if table()["material"][self.name]["kind"] == "glass" else "plastics"


def material_names() -> tuple[str, ...]:
    """Return the lens materials the bench knows how to cut."""
    return tuple(table()["material"])


@cache
def lens_material(name: str) -> LensMaterial:
    """Return how a material of the table cuts.

    name: for example "hard-resin-1.50".

    Raises LabError with the names there are.
    """
    require_one_of("lens material", name, material_names())
    names = [one.name for one in fields(LensMaterial) if one.name != "name"]
    return LensMaterial(name=name, **{one: default(f"material.{name}.{one}") for one in names})
