"""The front curve without oblique astigmatism, thin lens and third order, as workings to follow by hand."""

from lablib.errors import LabError
from lablib.optics.practice import source_of, usual
from lablib.optics.terms import distance_term, in_full, power_step, power_term
from lablib.optics.tscherning import ThinLens
from lablib.working import Working

_TSCHERNING = (
    "Tscherning: (n + 2) F1^2 - ((n + 2) F + 2 (n^2 - 1) Z) F1 + n (F + (n - 1) Z)^2 = 0 "
    "(from memory, and derived)"
)


def best_form_workings(lens: ThinLens) -> tuple[Working, ...]:
    """Return the flatter front curve without oblique astigmatism, worked; the steeper one has + for -.

    lens: power, index and place.

    Raises LabError for a lens that has no such curve.
    """
    curves = lens.front_curves_d()
    if not curves:
        raise LabError(
            f"power {lens.power_d:+.2f} D has no spherical form without oblique astigmatism: give a weaker "
            "power, or take a conic front"
        )
    power = power_term("F", lens.power_d, "power")
    index = in_full("n", lens.index, "", least_digits=3, meaning="index")
    meaning = "lens to the eye's centre of rotation"
    if lens.centre_of_rotation_mm == usual("centre_of_rotation"):
        meaning = f"{meaning}, {source_of('centre_of_rotation')}"
    distance = distance_term("s", lens.centre_of_rotation_mm, meaning)
    rotation = power_step(
        "that distance as a vergence", "Z", "1000 / s", (distance,), lens.rotation_d, digits=3
    )
    place = rotation.as_term()
    _, beside_front, alone = lens.tscherning
    linear = power_step(
        "the number beside F1",
        "b",
        "(n + 2) * F + 2 * (n^2 - 1) * Z",
        (index, power, place),
        beside_front,
        digits=3,
        source=_TSCHERNING,
    )
    constant = Working(
        what="the number that stands alone",
        symbol="c",
        formula="n * (F + (n - 1) * Z)^2",
        terms=(index, power, place),
        value=alone,
        unit="D2",
        digits=3,
    )
    flatter = power_step(
        "flatter front curve without oblique astigmatism",
        "F_1",
        "(b - sqrt(b^2 - 4 * (n + 2) * c)) / (2 * (n + 2))",
        (linear.as_term(), index, constant.as_term()),
        curves[0],
    )
    return rotation, linear, constant, flatter
