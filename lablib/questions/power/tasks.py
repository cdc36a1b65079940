"""Formulas of power in place, what each is for, and tasks at the bench that ask for one of them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lablib.optics.material import material, materials
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.study.draws import Draws

Task = Callable[[Draws], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Formula:
    """A formula to choose.

    words: as it is written, with its symbols explained.
    used_for: when it is right, as a sentence.
    not_here: to somebody who took it where it is not.
    """

    words: str
    used_for: str
    not_here: str


FORMULAS: Mapping[str, Formula] = MappingProxyType(
    {
        "focal-length": Formula(
            words="f = 100 / F, focal length in cm and power",
            used_for="A power and the distance to its focus belong together: either gives the other.",
            not_here="You took the formula for a focal length. It ties a power to the distance of its focus, "
            "and that is neither known nor asked here.",
        ),
        "meridian": Formula(
            words="F = S + C sin²(m - A), power along a meridian m",
            used_for="A toric lens has another power in every direction; this gives the one along m.",
            not_here="You took the formula for a meridian. It gives what a toric lens has in one direction, "
            "and no such direction is asked about here.",
        ),
        "vertex": Formula(
            words="F / (1 - d F), power after moving closer to the eye by d metres",
            used_for="It keeps the focus where the eye needs it while the lens moves.",
            not_here="You took the formula for another vertex distance. It is for a lens worn at another "
            "distance from the eye than it was tested at, and nothing of the kind is told here.",
        ),
        "lens-measure": Formula(
            words="R (n - 1) / 0.530, surface power from a dial reading R",
            used_for="The dial is engraved for index 1.530; this turns its reading into the power the "
            "surface has in its own index.",
            not_here="You took the formula for a lens measure. It turns what a dial shows into a surface "
            "power, and no such reading is told here.",
        ),
        "back-vertex": Formula(
            words="F1 / (1 - t F1 / n) + F2, back vertex power from two surfaces t metres apart",
            used_for="Light from the front surface has come closer to its focus when it reaches the back; in "
            "a thick lens that counts.",
            not_here="You took the formula for a thick lens. It needs two surface powers and a thickness, "
            "and they are not what is known here.",
        ),
        "equivalent": Formula(
            words="M = S + C / 2, spherical equivalent",
            used_for="It gives the one sphere that lies in the middle between both meridians.",
            not_here="You took the spherical equivalent. It puts one sphere in the place of a toric lens, "
            "and that is not asked here.",
        ),
    }
)


def _window(draws: Draws) -> str:
    power = written_power(draws.step(2.0, 8.0, 0.25))
    return (
        f"A loose lens is marked {power} D. You hold it up so that the lamp at the far end of the yard is "
        "sharp on a card, and want to know how far behind the lens the card should be."
    )


def _card(draws: Draws) -> str:
    length = draws.step(12.0, 60.0, 1.0)
    return (
        f"A loose plus lens shows the far end of the street sharp on a card {length:g} cm behind it. You "
        "want its power."
    )


def _decentred(draws: Draws) -> str:
    direction = draws.one_of(
        ("sideways, so you need its power along 180", "up, so you need its power along 90")
    )
    return f"A lens of {_toric(draws)} is to be decentred {direction}."


def _section(draws: Draws) -> str:
    angle = draws.step(5.0, 175.0, 5.0)
    lens = _toric(draws)
    return (
        f"A corner of the rim lies along {angle:g} from the optical centre of a lens of {lens}. For the edge "
        "there you need the power in that direction."
    )


def _closer(draws: Draws) -> str:
    power, worn = written_power(-draws.step(8.0, 14.0, 0.25)), draws.step(8.0, 11.0, 1.0)
    return (
        f"A sphere of {power} D was tested at 14 mm from the cornea and will be worn at {worn:g} mm. You "
        "want the power that does the same there."
    )


def _contact(draws: Draws) -> str:
    power = written_power(draws.step(6.0, 14.0, 0.25) * draws.one_of((-1.0, 1.0)))
    return f"Spectacles of {power} D, worn at 12 mm, are to become contact lenses. You want their power."


def _dial(draws: Draws) -> str:
    reading, n = written_power(draws.step(4.0, 9.0, 0.25)), _index(draws)
    return (
        f"On the front of a lens of index {n} the lens measure shows {reading}. You want the surface power."
    )


def _two_dials(draws: Draws) -> str:
    reading, n = written_power(-draws.step(4.0, 9.0, 0.25)), _index(draws)
    return (
        f"A remade lens of index {n} must have the same back as the first. The lens measure shows {reading} "
        "on the first, and the order form asks for the power of that surface."
    )


def _thick(draws: Draws) -> str:
    front, back = written_power(draws.step(7.0, 11.0, 0.25)), written_power(-draws.step(2.0, 5.0, 0.25))
    thickness, n = draws.step(5.0, 8.0, 0.5), _index(draws)
    return (
        f"A lens of index {n} has a front surface of {front} D, a back surface of {back} D and a centre of "
        f"{thickness:g} mm. You want to know what the focimeter shows with the back on the stop."
    )


def _one_sphere(draws: Draws) -> str:
    return (
        f"A wearer of {_toric(draws)} wants swimming goggles, which come as spheres only. You want the "
        "sphere that lies in the middle."
    )


def _chart(draws: Draws) -> str:
    return (
        "A chart of front curves goes by the power half way between the two meridians. The lens is "
        f"{_toric(draws)}."
    )


def _toric(draws: Draws) -> Prescription:
    return Prescription(
        sphere_d=draws.step(1.0, 5.0, 0.25) * draws.one_of((-1.0, 1.0)),
        cylinder_d=-draws.step(0.75, 3.0, 0.25),
        axis_deg=draws.step(5.0, 175.0, 5.0),
    )


def _index(draws: Draws) -> str:
    name = draws.one_of([name for name in materials() if name != "urethane-1.53"])
    return f"{material(name).index:.3f}"


TASKS: Mapping[str, tuple[Task, ...]] = MappingProxyType(
    {
        "focal-length": (_window, _card),
        "meridian": (_decentred, _section),
        "vertex": (_closer, _contact),
        "lens-measure": (_dial, _two_dials),
        "back-vertex": (_thick,),
        "equivalent": (_one_sphere, _chart),
    }
)
