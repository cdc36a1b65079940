"""The addition as a focimeter shows it, as workings: power through the near part less power for distance.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.addition_reading import addition_read_d
from lablib.optics.terms import distance_term, in_full, power_step, power_term
from lablib.optics.thick_lens import shape_power_d
from lablib.working import Term, Working

_JALIE = "M. Jalie, The Principles of Ophthalmic Lenses (from memory)"
_DIGITS = 3


def addition_read_workings(
    addition_d: float, *, front_d: float, back_d: float, thickness_mm: float, index: float, read_from: str
) -> tuple[Working, ...]:
    """Return what is read for an addition on the front surface, worked; the last step is the reading.

    addition_d, front_d, back_d, thickness_mm, index, read_from: as in `addition_read_d`, which also says what
        it raises.
    """
    lens = {"front_d": front_d, "back_d": back_d, "thickness_mm": thickness_mm, "index": index}
    read = addition_read_d(addition_d, **lens, read_from=read_from)
    added, front = (
        power_term("Add", addition_d, "addition on the front"),
        power_term("F_1", front_d, "front surface power for distance"),
    )
    if read_from == "front":
        what = "addition read from the front: the back surface adds the same to both"
        return (power_step(what, "Add_f", "(F_1 + Add) - F_1", (front, added), read, digits=_DIGITS),)
    rest = (
        distance_term("t", thickness_mm, "centre thickness"),
        in_full("n", index, "", least_digits=3, meaning="index"),
    )
    near = power_step(
        "front surface power, near part", "F_n", "F_1 + Add", (front, added), front_d + addition_d
    )
    brought = (
        _at_back(
            "front surface, near part, at the back vertex", "F_nb", near.as_term(), rest, read + _far(lens)
        ),
        _at_back("front surface, distance part, at the back vertex", "F_fb", front, rest, _far(lens)),
    )
    terms = tuple(step.as_term() for step in brought)
    what = "addition read from the back"
    return near, *brought, power_step(what, "Add_b", "F_nb - F_fb", terms, read, digits=_DIGITS)


def _far(lens: dict[str, float]) -> float:
    return shape_power_d(lens["front_d"], lens["thickness_mm"], lens["index"])


def _at_back(what: str, symbol: str, power: Term, rest: tuple[Term, Term], value: float) -> Working:
    formula = f"{power.symbol} / (1 - t / 1000 * {power.symbol} / n)"
    return power_step(what, symbol, formula, (power, *rest), value, digits=_DIGITS, source=_JALIE)
