"""What a material does, as workings to follow by hand: fringe, reflections, curves, the falling ball.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.chromatic import abbe_number, fringe_at, fringe_prism_d
from lablib.optics.eye import Eye
from lablib.optics.impact import DropBall, gravity_m_per_s2
from lablib.optics.index_effect import curve_variation_factor, reference_index, saving_by_rule
from lablib.optics.polariser import filter_turned_deg, glare_let_through
from lablib.optics.power_workings import prism_at_workings
from lablib.optics.prescription import Prescription
from lablib.optics.reflection import surface_reflectance, transmittance
from lablib.optics.solid import weight_of_volume_g
from lablib.optics.terms import direction_term, in_full, prism_step
from lablib.working import Term, Working

_FRESNEL = "Fresnel's formula for light square on a surface (from memory)"
_BHOOTRA = "A. Bhootra, Ophthalmic Lenses, p. 117"


def fringe_workings(
    rx: Prescription, *, eye: Eye | str, in_mm: float, up_mm: float, abbe: float
) -> tuple[Working, ...]:
    """Return the fringe at a point of a lens, worked: the parts of the prism, the prism, the fringe.

    rx, eye, in_mm, up_mm, abbe: as in `fringe_at`, which also says what it raises.
    """
    fringe = fringe_at(rx, eye=eye, in_mm=in_mm, up_mm=up_mm, abbe=abbe)
    steps = prism_at_workings(rx, eye=eye, in_mm=in_mm, up_mm=up_mm)
    parts = tuple(step.as_term() for step in steps[-2:])
    prism = prism_step("prism at the point", "P", "sqrt(P_in^2 + P_up^2)", parts, fringe.prism_prism_d)
    return *steps, prism, fringe_working(fringe.prism_prism_d, abbe)


def fringe_working(prism_prism_d: float, abbe: float) -> Working:
    """Return the fringe of a prism, worked.

    prism_prism_d, abbe: as in `fringe_prism_d`, which also says what it raises.
    """
    return Working(
        what="fringe (transverse chromatic aberration)",
        symbol="T",
        formula="P / V",
        terms=(
            Term(symbol="P", value=prism_prism_d, unit="prism dioptres", meaning="prism at the point"),
            _abbe(abbe),
        ),
        value=fringe_prism_d(prism_prism_d, abbe),
        unit="prism dioptres",
        digits=3,
        source=_BHOOTRA,
    )


def abbe_working(*, n_f: float, n_d: float, n_c: float) -> Working:
    """Return the Abbe number from three indices, worked.

    n_f, n_d, n_c: as in `abbe_number`, which also says what it raises.
    """
    return Working(
        what="Abbe number",
        symbol="V",
        formula="(n_d - 1) / (n_F - n_C)",
        terms=(
            in_full("n_d", n_d, "", least_digits=4, meaning="index for yellow light"),
            in_full("n_F", n_f, "", least_digits=4, meaning="index for blue light"),
            in_full("n_C", n_c, "", least_digits=4, meaning="index for red light"),
        ),
        value=abbe_number(n_f=n_f, n_d=n_d, n_c=n_c),
        source="definition, ISO 13666 (from memory)",
    )


def surface_reflectance_working(index: float) -> Working:
    """Return what one surface throws back, worked, in per cent.

    index: as in `surface_reflectance`, which also says what it raises.
    """
    return Working(
        what="light one surface throws back",
        symbol="R",
        formula="100 * ((n - 1) / (n + 1))^2",
        terms=(_index("n", index, "index"),),
        value=100.0 * surface_reflectance(index),
        unit="%",
        source=_FRESNEL,
    )


def transmittance_workings(index: float) -> tuple[Working, Working]:
    """Return what two uncoated surfaces let through, worked, in per cent: one surface, then both.

    index: as in `transmittance`, which also says what it raises.
    """
    one = surface_reflectance_working(index)
    return one, Working(
        what="light both surfaces let through, thrown back and forth between them",
        symbol="T_lens",
        formula="100 * (100 - R) / (100 + R)",
        terms=(one.as_term(),),
        value=100.0 * transmittance(index),
        unit="%",
        source="sum of the light that passes at once and of all that is thrown back and forth; derived",
    )


def curve_variation_working(index: float) -> Working:
    """Return the curve variation factor, worked.

    index: as in `curve_variation_factor`, which also says what it raises.
    """
    return Working(
        what="curve variation factor",
        symbol="k",
        formula="(n_g - 1) / (n - 1)",
        terms=(
            _index("n_g", reference_index(), "index of crown glass"),
            _index("n", index, "index of the lens at the d line"),
        ),
        value=curve_variation_factor(index),
        digits=3,
        source="M. Jalie: 0.523 / (n - 1)",
    )


def saving_working(from_index: float, to_index: float) -> Working:
    """Return the saving by rule from one index to a higher one, worked, in per cent.

    from_index, to_index: as in `saving_by_rule`, which also says what it raises.
    """
    return Working(
        what="saving by the rule",
        symbol="s",
        formula="100 * (1 - (n1 - 1) / (n2 - 1))",
        terms=(
            _index("n1", from_index, "index of the thicker lens"),
            _index("n2", to_index, "index of the thinner lens"),
        ),
        value=100.0 * saving_by_rule(from_index, to_index),
        unit="%",
        digits=1,
        source="common practice; exact for the curves, a rule for the thickness",
    )


def filter_turned_workings(*, packet_axis_deg: float, ordered_axis_deg: float) -> tuple[Working, Working]:
    """Return how far a filter is turned with its blank and what glare it then lets through, worked.

    packet_axis_deg, ordered_axis_deg: as in `filter_turned_deg`, which also says what it raises.
    """
    turned = filter_turned_deg(packet_axis_deg=packet_axis_deg, ordered_axis_deg=ordered_axis_deg)
    straight = ordered_axis_deg - packet_axis_deg
    around = "" if abs(straight - turned) < 1.0 else (" - 180" if straight > turned else " + 180")
    turn = Working(
        what="turn of the blank and its filter (minus: clockwise)",
        symbol="d",
        formula=f"A_o - A_p{around}",
        terms=(
            direction_term("A_o", ordered_axis_deg, "axis ordered"),
            direction_term("A_p", packet_axis_deg, "axis in the packet"),
        ),
        value=turned,
        unit="degrees",
        digits=0,
    )
    passed = Working(
        what="glare let through by a perfect filter so turned",
        symbol="g",
        formula="100 * (sin(d))^2",
        terms=(turn.as_term(),),
        value=100.0 * glare_let_through(turned),
        unit="%",
        digits=0,
        source="Malus's law (from memory)",
    )
    return turn, passed


def drop_ball_workings(ball: DropBall) -> tuple[Working, Working]:
    """Return energy and speed of a falling ball, worked.

    ball: it.
    """
    fall = in_full("h", ball.height_mm, "mm", least_digits=0, meaning="height of the fall")
    gravity = in_full("g", gravity_m_per_s2(), "m/s2", meaning="acceleration of free fall")
    mass = in_full("m", ball.mass_g, "g", meaning="mass of the ball")
    energy = Working(
        what="energy the ball arrives with",
        symbol="E",
        formula="m / 1000 * g * h / 1000",
        terms=(mass, gravity, fall),
        value=ball.energy_j,
        unit="J",
        digits=3,
        source=ball.source,
    )
    speed = Working(
        what="speed the ball arrives with",
        symbol="v",
        formula="sqrt(2 * g * h / 1000)",
        terms=(gravity, fall),
        value=ball.speed_m_per_s,
        unit="m/s",
    )
    return energy, speed


def weight_working(volume_mm3: float, density: float, *, mark: str = "", whose: str = "the lens") -> Working:
    """Return the weight of a volume, worked.

    volume_mm3: [mm3]; density: of the material [g/cm3].
    mark: put behind every symbol, to tell lenses apart; whose: the lens in words.
    """
    return Working(
        what=f"weight of {whose}",
        symbol=f"W{mark}",
        formula=f"v{mark} / 1000 * rho{mark}",
        terms=(
            in_full(f"v{mark}", volume_mm3, "mm3", least_digits=0, meaning=f"volume of {whose}"),
            in_full(f"rho{mark}", density, "g/cm3", meaning=f"density of {whose}"),
        ),
        value=weight_of_volume_g(volume_mm3, density),
        unit="g",
        source="definition of density; 1 cm3 is 1,000 mm3",
    )


def _index(symbol: str, index: float, meaning: str) -> Term:
    return in_full(symbol, index, "", least_digits=3, meaning=meaning)


def _abbe(abbe: float) -> Term:
    return in_full("V", abbe, "", least_digits=0, meaning="Abbe number")
