"""Orders of an invented lens room, as data; what is decided about each is worked out by the optics."""

from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.optics.fitness import Fitness, fitness
from lablib.optics.material_order import MaterialOrder
from lablib.optics.prescription import Prescription


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomOrder:
    """One order.

    key: its stable name; theme: what it is about.
    words: as it lies on the bench.
    order: the same as data.
    tempts: a half measure, or what somebody does who doubts a sound order.
    sound_reason: why it is sound; empty where it is not.
    """

    key: str
    theme: str
    words: str
    order: MaterialOrder
    tempts: str
    sound_reason: str = ""

    @property
    def fitness(self) -> Fitness:
        """What is decided about it."""
        return _decided(self.order)

    @property
    def is_sound(self) -> bool:
        """Whether it is made as ordered."""
        return self.fitness.decision == "make"

    @property
    def reason(self) -> str:
        """Why it is made, or not."""
        return self.sound_reason if self.is_sound else self.fitness.found[0].reason

    @property
    def decision_words(self) -> str:
        """What is done with it, as an option to pick."""
        if self.is_sound:
            return "make it as ordered"
        gravest = self.fitness.found[0]
        does = {
            "refuse": "refuse it as ordered",
            "hold": "hold it",
            "change": "change it, which is ours to do",
        }[gravest.decision]
        return f"{does}. {gravest.instead}"


# Asked again and again of the same few orders.
_decided = cache(fitness)


@cache
def room_orders() -> dict[str, RoomOrder]:
    """Return every order by its key, theme by theme."""
    found = {}
    for theme, groups in read_table("lablib.questions.material", "orders.toml")["theme"].items():
        for group, rows in groups.items():
            for number, row in enumerate(rows, start=1):
                key = f"{theme}-{group}-{number}"
                found[key] = RoomOrder(
                    key=key,
                    theme=theme,
                    words=row["words"],
                    order=_order(row),
                    tempts=row["tempts"],
                    sound_reason=row.get("reason", ""),
                )
    return found


@cache
def themes() -> tuple[str, ...]:
    """Return the themes, in the order of the data."""
    return tuple(dict.fromkeys(one.theme for one in room_orders().values()))


def of_theme(theme: str, *, sound: bool) -> tuple[RoomOrder, ...]:
    """Return the orders of a theme that are made as ordered, or those that are not.

    theme: of `themes`; sound: which of them.
    """
    return tuple(one for one in room_orders().values() if one.theme == theme and one.is_sound == sound)


def _order(row: dict) -> MaterialOrder:
    values = dict(row["order"])
    values["steps"] = tuple(values.get("steps", ()))
    if "rx" in row:
        sphere, cylinder, axis = row["rx"]
        values["prescription"] = Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)
    return MaterialOrder(**values)
