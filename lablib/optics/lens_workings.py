"""The lens as workings a learner can follow: curves, the lean of a prism, weight.

Every value comes from the function that computes it elsewhere; here only the steps are put in words.
"""

import math

from lablib.optics.lens import Lens
from lablib.optics.solid import FinishedLens
from lablib.optics.surface_workings import radius_working
from lablib.optics.thick_lens import back_surface_d
from lablib.working import Term, Working


def curve_workings(lens: Lens, *, along_axis_d: float, across_axis_d: float) -> tuple[Working, ...]:
    """Return the back surface powers and the radii of all surfaces.

    lens: the solid.
    along_axis_d, across_axis_d: the prescription's power along its axis and at right angles to it [D].
    """
    powers = dict.fromkeys((along_axis_d, across_axis_d))
    names = ("back surface power",) if len(powers) == 1 else tuple(f"{power:+.2f}" for power in powers)
    steps = [radius_working("front radius", lens.front_curve_d, lens.index, is_back=False)]
    for name, power in zip(names, powers, strict=True):
        what = name if len(powers) == 1 else f"back surface power for the meridian of {name} D"
        surface = _back_power(what, power, lens)
        steps += [surface, radius_working("its radius", surface.value, lens.index, is_back=True)]
    steps += _tilt(lens)
    return tuple(step for step in steps if step is not None)


def _tilt(lens: Lens) -> tuple[Working, ...]:
    """How far the back surface leans to give the prescribed prism; nothing where it does not."""
    amount = lens.prism_prism_d
    if not amount:
        return ()
    deviation = Working(
        what="how far the prescribed prism turns a ray",
        symbol="d",
        formula="atan(P / 100)",
        terms=(Term(symbol="P", value=amount, unit="prism dioptres", digits=3, meaning="prescribed prism"),),
        value=math.degrees(math.atan(amount / 100.0)),
        unit="degrees",
        digits=4,
        source="definition of the prism dioptre",
    )
    lean = Working(
        what="lean of the back surface",
        symbol="a",
        formula="atan(sin(d) / (n - cos(d)))",
        terms=(deviation.as_term(), Term(symbol="n", value=lens.index, digits=3, meaning="index")),
        value=lens.back.tilt_deg,
        unit="degrees",
        digits=3,
        source="Snell's law for a ray along the axis: n sin(a) = sin(a + d)",
    )
    return deviation, lean


def _back_power(what: str, power: float, lens: Lens) -> Working:
    return Working(
        what=what,
        symbol="F_2",
        formula="F - F_1 / (1 - t / 1000 * F_1 / n)",
        terms=(
            Term(symbol="F", value=power, unit="D", meaning="prescribed back vertex power"),
            Term(symbol="F_1", value=lens.front_curve_d, unit="D", digits=3, meaning="front curve"),
            Term(symbol="t", value=lens.centre_thickness_mm, unit="mm", digits=3, meaning="centre thickness"),
            Term(symbol="n", value=lens.index, digits=3, meaning="index"),
        ),
        value=back_surface_d(power, lens.front_curve_d, lens.centre_thickness_mm, lens.index),
        unit="D",
        digits=3,
        source="M. Jalie, The Principles of Ophthalmic Lenses (from memory)",
    )


def weight_working(finished: FinishedLens, density: float) -> Working:
    """Return the weight from volume and density.

    finished: the lens in its outline; density: of the material [g/cm3].
    """
    return Working(
        what="weight of the edged lens",
        symbol="W",
        formula="V / 1000 * rho",
        terms=(
            Term(
                symbol="V",
                value=finished.volume_mm3,
                unit="mm3",
                digits=0,
                meaning="volume inside the outline, by integration",
            ),
            Term(symbol="rho", value=density, unit="g/cm3", meaning="density"),
        ),
        value=finished.weight_g(density),
        unit="g",
        digits=1,
    )
