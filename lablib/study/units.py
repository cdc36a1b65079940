"""Units that stand behind a number in an answer, and what they are worth in one another."""

from collections.abc import Mapping

# By quantity: every way of writing a unit, and what one of it is worth in the quantity's first unit.
_QUANTITIES: tuple[Mapping[str, float], ...] = (
    {"mm": 1.0, "millimetre": 1.0, "millimetres": 1.0, "cm": 10.0, "centimetre": 10.0, "centimetres": 10.0}
    | {"m": 1000.0, "metre": 1000.0, "metres": 1000.0},
    {"D": 1.0, "dpt": 1.0, "dioptre": 1.0, "dioptres": 1.0, "diopter": 1.0, "diopters": 1.0},
    {"prism D": 1.0, "Δ": 1.0, "∆": 1.0, "prism dioptre": 1.0, "prism dioptres": 1.0}
    | {"prism diopter": 1.0, "prism diopters": 1.0},
    {"degrees": 1.0, "degree": 1.0, "°": 1.0, "deg": 1.0},
    {"N m": 1.0, "Nm": 1.0, "N mm": 0.001, "Nmm": 0.001},
    {"N": 1.0, "newton": 1.0, "newtons": 1.0},
    {"%": 1.0, "percent": 1.0, "per cent": 1.0},
    {"g": 1.0, "gram": 1.0, "grams": 1.0},
    {"min": 1.0, "minute": 1.0, "minutes": 1.0},
)


def worth(written: str, unit: str) -> float | None:
    """Return what one written unit is worth in the unit asked for, or None when it is another quantity.

    written: as it stands in an answer. Case is kept where it tells units apart (D, N, m).
    unit: the unit asked for, empty for a pure number.
    """
    quantity = next((known for known in _QUANTITIES if unit in known), {unit: 1.0})
    found = quantity.get(written)
    if found is None and written.lower() != written:
        # A capital at the start of a sentence, or a shouted unit of more than one letter.
        found = quantity.get(written.lower()) if len(written) > 1 else None
    return None if found is None else found / quantity[unit]
