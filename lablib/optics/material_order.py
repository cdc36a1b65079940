"""What is wanted of a lens besides its power: material, frame, coats, tint, filter, use, wearer, handling."""

from collections.abc import Iterator
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.errors import LabError, require_between, require_one_of
from lablib.optics.care import SOLVENTS, WHEELS, Care, care
from lablib.optics.frame import FRAME_KINDS
from lablib.optics.impact import least_safety_thickness_mm
from lablib.optics.limits import require_in_limits
from lablib.optics.operations import broken_rules
from lablib.optics.polariser import filter_turned_deg
from lablib.optics.power import require_axis
from lablib.optics.prescription import Prescription

USES = ("everyday", "hazards", "driving by day", "driving at night", "displays")
WEARERS = ("adult", "child", "one eye")
FILTERS = ("none", "polarised", "photochromic")
PURPOSES = ("dress", "safety")
SUPPLIES = ("stock", "surfaced")
# A turn smaller than this is none: axes are whole degrees.
_NO_TURN_DEG = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialOrder:
    """What is wanted of a lens besides its power.

    material: name of a material of the table.
    prescription: power; None where it does not matter.
    frame: kind of frame, "plastic", "metal", "grooved" or "drilled"; purpose: "dress" or "safety".
    use: "everyday", "hazards" (work that needs safety eyewear), "driving by day", "driving at night" or
        "displays".
    wearer: "adult", "child" or "one eye".
    tint_percent: light the tint takes off [%], 0 for none; from the bath.
    filter: "none", "polarised" or "photochromic".
    hard_coat, anti_reflection: which coats it has.
    supply: "stock" or "surfaced".
    packet_axis_deg: axis of a polarised stock lens when its filter stands right [degrees], None where it has
        no cylinder.
    steps: operations in the order done, names of `operations`; none where it is not said.
    wheel: "plastics" or "glass", None where it is not said; wiped_with: a solvent, None likewise.
    safety_level: "basic" or "impact-rated"; thinnest_mm: its thinnest place [mm], None where it is not said;
        marked: whether lens and frame carry their safety marking.

    Raises LabError for a word that is not known or a number out of range.
    """

    material: str
    prescription: Prescription | None = None
    frame: str = "plastic"
    purpose: str = "dress"
    use: str = "everyday"
    wearer: str = "adult"
    tint_percent: float = 0.0
    filter: str = "none"
    hard_coat: bool = True
    anti_reflection: bool = False
    supply: str = "surfaced"
    packet_axis_deg: float | None = None
    steps: tuple[str, ...] = ()
    wheel: str | None = None
    wiped_with: str | None = None
    safety_level: str = "basic"
    thinnest_mm: float | None = None
    marked: bool = True

    def __post_init__(self) -> None:
        kind = care(self.material).wheel
        for thing, value, known in (
            ("frame kind", self.frame, FRAME_KINDS),
            ("purpose of the frame", self.purpose, PURPOSES),
            ("use", self.use, USES),
            ("wearer", self.wearer, WEARERS),
            ("filter", self.filter, FILTERS),
            ("supply", self.supply, SUPPLIES),
            ("wheel", self.wheel or kind, WHEELS),
            ("solvent", self.wiped_with or SOLVENTS[0], SOLVENTS),
        ):
            require_one_of(thing, value, known)
        require_between("tint", self.tint_percent, low=0.0, high=100.0, unit="% of light taken off")
        broken_rules(self.steps, kind=kind)
        least_safety_thickness_mm(self.safety_level, most_plus_d=0.0)
        if self.thinnest_mm is not None:
            require_in_limits("thinnest place", self.thinnest_mm, "least_edge_mm")
        if self.packet_axis_deg is None:
            return
        require_axis(self.packet_axis_deg)
        if not self.prescription or not self.prescription.cylinder_d:
            raise LabError(
                f"packet axis {self.packet_axis_deg:g} belongs to a cylinder and the order has none: give "
                "the prescription with its cylinder, or leave the axis out"
            )

    @property
    def care(self) -> Care:
        """What its material bears."""
        return care(self.material)

    @property
    def transmits_percent(self) -> float:
        """Light that tint and filter let through [%]; what surfaces throw back is left aside."""
        through = 100.0 - self.tint_percent
        return min(through, _treatment("polarised")) if self.filter == "polarised" else through

    @property
    def filter_turned_deg(self) -> float:
        """How far a polarised stock lens has its filter turned to bring its axis [degrees]; else 0."""
        if self.packet_axis_deg is None:
            return 0.0
        return filter_turned_deg(
            packet_axis_deg=self.packet_axis_deg, ordered_axis_deg=self.prescription.axis_deg
        )

    @property
    def most_plus_d(self) -> float:
        """Power of its most plus meridian, 0 where no power is given [D]."""
        rx = self.prescription
        return 0.0 if rx is None else max(rx.sphere_d, rx.sphere_d + rx.cylinder_d)

    @property
    def traits(self) -> frozenset[str]:
        """Everything true of the order that a pairing may ask for, in its words."""
        return frozenset(
            (
                *self._of_material(),
                *self._of_frame_and_use(),
                *self._of_coats_and_light(),
                *self._of_handling(),
            )
        )

    def _of_material(self) -> Iterator[str]:
        bears = self.care
        yield bears.wheel
        told = {
            "not tough": bears.toughness != "tough",
            "bears no holes": not bears.holes,
            "takes no bath tint": bears.bath == "no",
            "needs a hard coat": bears.hard_coat == "needed",
        }
        yield from _true(told)

    def _of_frame_and_use(self) -> Iterator[str]:
        yield f"{self.frame} frame"
        yield f"{self.purpose} frame"
        yield {"displays": "reads displays", "hazards": "for hazards"}.get(self.use, self.use)
        least = least_safety_thickness_mm(self.safety_level, most_plus_d=self.most_plus_d)
        told = {
            "driving": self.use.startswith("driving"),
            "must be protected": self.wearer in ("child", "one eye"),
            "thinner than the safety table": self.thinnest_mm is not None
            and round(self.thinnest_mm, 2) < least,
            "thickness not said": self.thinnest_mm is None,
            "unmarked": not self.marked,
        }
        yield from _true(told)

    def _of_coats_and_light(self) -> Iterator[str]:
        through = round(self.transmits_percent, 6)
        yield self.filter
        told = {
            "tinted": self.tint_percent > 0.0,
            "too dark for the night": through < _treatment("night"),
            "too dark for the road": through < _treatment("road"),
            "no hard coat": not self.hard_coat,
            "anti-reflection": self.anti_reflection,
        }
        yield from _true(told)

    def _of_handling(self) -> Iterator[str]:
        broken = {rule.name for rule in broken_rules(self.steps, kind=self.care.wheel)}
        yield self.supply
        yield from (f"breaks {name}" for name in sorted(broken))
        told = {
            "operations out of order": bool(broken),
            "cut after hardening": bool(broken & {"edge-before-hardening", "drill-before-hardening"}),
            "turned to another axis": abs(self.filter_turned_deg) > _NO_TURN_DEG,
            "wrong wheel": self.wheel not in (None, self.care.wheel),
            "wiped with what attacks it": self.wiped_with in self.care.attacked_by,
        }
        yield from _true(told)


def treatment_words() -> dict[str, str]:
    """Return what each treatment is and does, by name."""
    return dict(read_table("lablib.optics", "treatments.toml")["treatment"])


def _treatment(name: str) -> float:
    return read_table("lablib.optics", "treatments.toml")[name]["value"]


def _true(told: dict[str, bool]) -> Iterator[str]:
    return (words for words, is_so in told.items() if is_so)
