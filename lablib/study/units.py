"""Everyday units that stand behind a number in an answer, and what they are worth in one another."""

from collections.abc import Mapping, Sequence

# By quantity: every way of writing a unit, and what one of it is worth in the quantity's first unit.
_QUANTITIES: tuple[Mapping[str, float], ...] = (
    {"mm": 1.0, "millimetre": 1.0, "millimetres": 1.0, "millimeter": 1.0, "millimeters": 1.0}
    | {"cm": 10.0, "centimetre": 10.0, "centimetres": 10.0, "centimeter": 10.0, "centimeters": 10.0}
    | {"m": 1000.0, "metre": 1000.0, "metres": 1000.0, "meter": 1000.0, "meters": 1000.0},
    {"degrees": 1.0, "degree": 1.0, "°": 1.0, "deg": 1.0},
    {"N m": 1.0, "Nm": 1.0, "N·m": 1.0, "N mm": 0.001, "Nmm": 0.001, "N·mm": 0.001},
    {"N": 1.0, "newton": 1.0, "newtons": 1.0},
    {"%": 1.0, "percent": 1.0, "per cent": 1.0},
    {"g": 1.0, "gram": 1.0, "grams": 1.0, "kg": 1000.0, "kilogram": 1000.0, "kilograms": 1000.0},
    {"min": 1.0, "minute": 1.0, "minutes": 1.0, "h": 60.0, "hour": 60.0, "hours": 60.0},
)


def _folded(written: str) -> str:
    return " ".join(written.split()).casefold()


# Within one quantity capitals tell no units apart.
_WORTH = tuple({_folded(name): one for name, one in known.items()} for known in _QUANTITIES)


def worth(written: str, unit: str, *, also: Sequence[str] = ()) -> float | None:
    """Return what one written unit is worth in the unit asked for, or None when it is another quantity.

    written: as it stands in an answer, in capitals or not, with a full stop behind it or not.
    unit: the unit asked for, empty for a pure number.
    also: other ways of writing that very unit.
    """
    found, wanted = _folded(written.strip().removesuffix(".")), _folded(unit)
    if found in map(_folded, (unit, *also)):
        return 1.0
    quantity = next((known for known in _WORTH if wanted in known), {})
    return quantity[found] / quantity[wanted] if found in quantity else None
