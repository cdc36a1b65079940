"""What may be changed on one lens so that it holds on its block, and what each change costs."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cache
from types import MappingProxyType

from lablib.bench.clearance import clearance_mm
from lablib.bench.contact import block_contact
from lablib.bench.parameter import parameters, table
from lablib.bench.setup import Setup
from lablib.bench.spoilage import MINUTES_PER_HOUR, SpoiledLens
from lablib.datafile import read_table
from lablib.errors import LabError, require_one_of
from lablib.job.eye_sheet import EyeSheet
from lablib.job.ticket import Ticket
from lablib.optics.material import materials

PARTS = ("grip", "cut", "lens", "order")
# What a round block or a fresh lens is like: the bench's own defaults.
_GOOD = Setup()
# Only a remedy of this part is asked of prescriber or dispenser.
_ASKED = "order"


@dataclass(frozen=True, slots=True, kw_only=True)
class Remedy:
    """One change.

    name: a stable name; words: what to do.
    money: spent on one lens; minutes: worked on it [min].
    part: what it changes, one of `PARTS`; a change of the order is the dispenser's to agree to.
    """

    name: str
    words: str
    money: float
    minutes: float
    part: str

    @property
    def cost(self) -> float:
        """Money spent and work paid [money]."""
        return self.money + self.minutes * _table()["paid"]["hourly_rate"] / MINUTES_PER_HOUR

    @property
    def is_asked(self) -> bool:
        """Whether it changes the order, so that somebody must agree to it first."""
        return self.part == _ASKED


def _table() -> dict:
    return read_table("lablib.job", "remedies.toml")


@cache
def remedies() -> Mapping[str, Remedy]:
    """Return every change by name, in the order of the bench; those of the order last."""
    return MappingProxyType({name: Remedy(name=name, **row) for name, row in _table()["remedy"].items()})


@cache
def spoiled_lens() -> SpoiledLens:
    """Return what one spoiled lens costs in the invented lab of the table."""
    paid = _table()["paid"]
    return SpoiledLens(
        lens_price=paid["spoiled_lens_price"],
        labour_min=paid["spoiled_labour_min"],
        hourly_rate=paid["hourly_rate"],
        delivery=paid["spoiled_delivery"],
    )


def changed(sheet: EyeSheet, name: str) -> Ticket | None:
    """Return the ticket with one change made for this lens; None where it would change nothing or cannot be.

    sheet: the lens, worked, whose cut is known; name: of the change.

    Raises LabError for a change there is not.
    """
    require_one_of("remedy", name, tuple(remedies()))
    new = _CHANGES[name](sheet)
    return None if new is None or new == sheet.ticket else new


def _blocking(**new: object) -> Callable[[EyeSheet], Ticket]:
    return lambda sheet: replace(sheet.ticket, blocking=replace(sheet.ticket.blocking, **new))


def _cut(**new: object) -> Callable[[EyeSheet], Ticket]:
    return lambda sheet: replace(sheet.ticket, cut=replace(sheet.ticket.cut, **new))


def _lens(sheet: EyeSheet, **new: object) -> Ticket:
    order = replace(sheet.order, lens=replace(sheet.order.lens, **new))
    return replace(sheet.ticket, **{sheet.eye.value: order})


def _round_block(sheet: EyeSheet) -> Ticket | None:
    clears = clearance_mm(sheet.cut.lens.outline_mm, block_contact(_GOOD.block)) > 0.0
    return _blocking(block=_GOOD.block)(sheet) if clears else None


def _film(sheet: EyeSheet) -> Ticket | None:
    return _blocking(film=True, film_wrinkle=_GOOD.film_wrinkle)(sheet)


def _smaller_bites(sheet: EyeSheet) -> Ticket | None:
    material = sheet.cut.material
    least = parameters()[f"material.{material.name}.depth_per_turn_mm"].low
    half = max(least, material.depth_per_turn_mm / 2.0)
    return _cut(depth_per_turn_mm=half)(sheet) if half < material.depth_per_turn_mm else None


def _crib(sheet: EyeSheet) -> Ticket | None:
    leaves = _table()["crib"]["leaves_mm"]
    now = sheet.ticket.cut.crib_allowance_mm
    return _cut(crib_allowance_mm=leaves)(sheet) if now is None or now > leaves else None


def _smaller_blank(sheet: EyeSheet) -> Ticket | None:
    step = _table()["blank"]["step_mm"]
    usual = step * -(-sheet.minimum_blank_mm // step)
    smaller = usual < sheet.order.lens.blank_diameter_mm
    return _lens(sheet, blank_diameter_mm=usual) if smaller else None


def _other_material(sheet: EyeSheet) -> Ticket | None:
    """The next higher index that is cut like plastics; the front keeps its power."""
    now = sheet.order.lens.material
    higher = [one for one in materials().values() if one.index > now.index and not _is_glass(one.name)]
    return _lens(sheet, material=min(higher, key=lambda one: one.index)) if higher else None


def _is_glass(name: str) -> bool:
    return table()["material"][name]["kind"] == "glass"


def _front(by: int) -> Callable[[EyeSheet], Ticket | None]:
    def change(sheet: EyeSheet) -> Ticket | None:
        curve = sheet.order.lens.front_surface_d + by * _table()["front"]["step_d"]
        try:
            return _lens(sheet, front_curve_d=curve, front_curve_measured_d=None)
        except LabError:
            return None

    return change


_CHANGES: Mapping[str, Callable[[EyeSheet], Ticket | None]] = {
    "clean lens": _blocking(skin=_GOOD.skin),
    "clean block": _blocking(block_face=_GOOD.block_face),
    "fresh pad": _blocking(pad_age_months=_GOOD.pad_age_months),
    "round block": _round_block,
    "matched block": _blocking(block_curve_d=None),
    "matched tip": _blocking(tip_face_mm=None, tip_stiffness=_GOOD.tip_stiffness, tip_swivels=True),
    "back tape": _blocking(back_tape=True),
    "film": _film,
    "dressed wheel": _cut(wheel=_GOOD.wheel),
    "smaller bites": _smaller_bites,
    "crib": _crib,
    "smaller blank": _smaller_blank,
    "other material": _other_material,
    "flatter front": _front(-1),
    "steeper front": _front(1),
}
