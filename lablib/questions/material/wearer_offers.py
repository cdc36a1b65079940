"""Wearers of an invented shop and what they are offered, as data; which offer is right is worked out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.errors import LabError
from lablib.optics.fitness import fitness
from lablib.optics.index_effect import curve_variation_factor
from lablib.optics.material_order import MaterialOrder
from lablib.optics.prescription import Prescription

_NEEDS = (
    "most_factor",
    "least_factor",
    "least_abbe",
    "most_density",
    "least_tint",
    "anti_reflection",
    "filter",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """One offer.

    words: material and coat, with the reason that somebody gives.
    values: of its order, beside those of its wearer.
    slip: name of the mistake it belongs to, told: what is wrong with it; both empty for the right one.
    """

    words: str
    values: Mapping[str, object]
    slip: str = ""
    told: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wearer:
    """Somebody who needs a lens.

    key: stable name.
    words: who, with a place for the power.
    power: least, greatest and step of the power [D].
    values: of every order for this wearer.
    needs: what the right offer must reach.
    why: what decides.
    offers: what is offered.
    cylinder: cylinder [D] and axis [degrees]; empty for a sphere.

    Raises LabError for a need that is not known.
    """

    key: str
    words: str
    power: tuple[float, float, float]
    values: Mapping[str, object]
    needs: Mapping[str, object]
    why: str
    offers: tuple[Offer, ...]
    cylinder: tuple[float, ...] = ()

    def __post_init__(self) -> None:
        for need in self.needs:
            if need not in _NEEDS:
                raise LabError(f"need {need!r} of wearer {self.key} is not known: give some of {_NEEDS}")

    def order(self, offer: Offer, power_d: float) -> MaterialOrder:
        """Return an offer as an order.

        offer: one of its own; power_d: sphere [D].
        """
        values = dict(self.values) | dict(offer.values)
        values["steps"] = tuple(values.get("steps", ()))
        cylinder, axis = self.cylinder or (0.0, None)
        rx = Prescription(sphere_d=power_d, cylinder_d=cylinder, axis_deg=axis)
        return MaterialOrder(prescription=rx, **values)

    def complaints(self, offer: Offer, power_d: float) -> tuple[str, ...]:
        """Return what an offer fails in: names of pairings that do not go together, and of needs not reached.

        offer: one of its own; power_d: sphere [D].
        """
        order = self.order(offer, power_d)
        found = [pairing.name for pairing in fitness(order).found]
        return (*found, *_unmet(self.needs, order))

    def right(self, power_d: float) -> Offer:
        """Return the one offer nothing stands against.

        power_d: sphere [D].
        """
        (one,) = (offer for offer in self.offers if not self.complaints(offer, power_d))
        return one


def _unmet(needs: Mapping[str, object], order: MaterialOrder) -> Iterator[str]:
    made_of = order.care.material
    factor = round(curve_variation_factor(made_of.index), 3)
    reached = {
        "most_factor": lambda wanted: factor <= wanted,
        "least_factor": lambda wanted: factor >= wanted,
        "least_abbe": lambda wanted: made_of.abbe >= wanted,
        "most_density": lambda wanted: made_of.density <= wanted,
        "least_tint": lambda wanted: order.tint_percent >= wanted,
        "anti_reflection": lambda wanted: order.anti_reflection == wanted,
        "filter": lambda wanted: order.filter == wanted,
    }
    return (need for need, wanted in needs.items() if not reached[need](wanted))


@cache
def wearers() -> dict[str, Wearer]:
    """Return every wearer by key."""
    found = {}
    for key, row in read_table("lablib.questions.material", "wearers.toml")["wearer"].items():
        found[key] = Wearer(
            key=key,
            words=row["words"],
            power=tuple(row["power"]),
            values=row["order"],
            needs=row["needs"],
            why=row["why"],
            cylinder=tuple(row.get("cylinder", ())),
            offers=tuple(
                Offer(
                    words=offer["words"],
                    values=offer["order"],
                    slip=offer.get("slip", ""),
                    told=offer.get("told", ""),
                )
                for offer in row["offer"]
            ),
        )
    return found
