"""What turns the lens, as workings: removal rate, force, lever arms and torque at one place of the cut."""

import math

from lablib.bench.cutting import water_factor
from lablib.bench.margin import CutResult, Place
from lablib.working import Term, Working

_POWER = "power balance, S. Malkin and C. Guo, Grinding Technology; rubbing and the motor's limit added"
_ARMS = "geometry of the support function and the bite's arc (derived)"
PI = Term(symbol="pi", value=math.pi, digits=6)


def speed_working(result: CutResult) -> Working:
    """Return the speed of the wheel's rim.

    result: of `work_cut`.
    """
    bench = result.bench
    return Working(
        what="speed of the wheel's rim",
        symbol="v_s",
        formula="pi * D_w * n_w / 60000",
        terms=(
            PI,
            Term(symbol="D_w", value=bench.wheel_diameter_mm, unit="mm", digits=1, meaning="wheel diameter"),
            Term(symbol="n_w", value=bench.wheel_speed_rpm, unit="rpm", digits=0, meaning="wheel speed"),
        ),
        value=bench.surface_speed_m_per_s,
        unit="m/s",
        digits=3,
    )


def force_workings(result: CutResult, place: Place) -> tuple[Working, ...]:
    """Return wheel speed, removal rate and tangential force at one place.

    result: of `work_cut`; place: which angle of which turn.
    """
    cutting, bench, at = result.cutting, result.bench, place.index
    speed = speed_working(result)
    removal = Working(
        what="removal rate",
        symbol="Q",
        formula="2 * pi * n_l / 60 * V / gamma",
        terms=(
            PI,
            Term(symbol="n_l", value=bench.lens_speed_rpm, unit="rpm", digits=2, meaning="lens speed"),
            Term(
                symbol="V",
                value=float(cutting.volume_mm3_per_rad[at]),
                unit="mm3 per radian",
                meaning="volume in the way, from the rim before to the rim after this turn",
            ),
            Term(
                symbol="gamma",
                value=float(cutting.pace[at]),
                digits=4,
                meaning="turn of the machine per turn of the contact over the lens",
            ),
        ),
        value=float(cutting.removal_mm3_per_s[at]),
        unit="mm3/s",
    )
    return speed, removal, _tangential(result, place, speed, removal)


def _tangential(result: CutResult, place: Place, speed: Working, removal: Working) -> Working:
    cutting, bench, at = result.cutting, result.bench, place.index
    return Working(
        what="mean tangential force",
        symbol="F_t",
        formula="min(k * (u * Q / v_s + f * w), P / v_s)",
        terms=(
            Term(
                symbol="k",
                value=float(cutting.wheel_factor[place.turn - 1, 0]),
                meaning=_factor_words(result, place),
            ),
            Term(
                symbol="u",
                value=result.material.specific_energy_j_per_mm3,
                unit="J/mm3",
                digits=3,
                meaning="specific cutting energy",
            ),
            removal.as_term(),
            speed.as_term(),
            Term(
                symbol="f",
                value=bench.rubbing_n_per_mm,
                unit="N/mm",
                digits=3,
                meaning="rubbing force per thickness",
            ),
            Term(
                symbol="w",
                value=float(cutting.thickness_mm[at]),
                unit="mm",
                meaning="thickness at the rim after this turn",
            ),
            Term(symbol="P", value=bench.motor_power_w, unit="W", digits=0, meaning="power of the motor"),
        ),
        value=float(cutting.force_n[at]),
        unit="N",
        source=_POWER,
    )


def _factor_words(result: CutResult, place: Place) -> str:
    finishes = result.cutting.plan.finishing[place.turn - 1]
    if finishes or water_factor(result.setup.water, result.material, result.bench) == 1.0:
        return "factor of the wheel"
    return f"factor of the wheel, and of roughing {result.setup.water} what is made to be roughed otherwise"


def arm_workings(result: CutResult, place: Place) -> tuple[Working, ...]:
    """Return the bite's angle and the lever arms at one place, the whole arm last.

    result: of `work_cut`; place: which angle of which turn.
    """
    touch, at = result.cutting.touch, place.index
    wheel = Term(
        symbol="R", value=result.bench.wheel_radius_mm, unit="mm", digits=2, meaning="radius of the wheel"
    )
    bite = _bite(result, place, wheel)
    terms = (
        Term(
            symbol="h",
            value=float(touch.support_mm[at]),
            unit="mm",
            digits=3,
            meaning="from the chuck axis to the tangent at the contact",
        ),
        Term(symbol="h'", value=float(touch.slope_mm[at]), unit="mm", digits=3, meaning="its slope"),
        wheel,
        bite.as_term(),
    )
    tangential = Working(
        what="lever arm of the tangential force",
        symbol="a_T",
        formula="(h + R) * cos(beta) - h' * sin(beta) - R",
        terms=terms,
        value=float(touch.arm_tangential_mm[at]),
        unit="mm",
        digits=3,
        source=_ARMS,
    )
    normal = Working(
        what="lever arm of the normal force",
        symbol="a_N",
        formula="(h + R) * sin(beta) + h' * cos(beta)",
        terms=terms,
        value=float(touch.arm_normal_mm[at]),
        unit="mm",
        digits=3,
        source=_ARMS,
    )
    sign = "+" if result.setup.wheel_sense == "against" else "-"
    both = Working(
        what=f"arm of both together, the wheel running {result.setup.wheel_sense} the lens edge",
        symbol="arm",
        formula=f"a_T {sign} a_N / kappa",
        terms=(tangential.as_term(), normal.as_term(), kappa_term(result)),
        value=float(result.cutting.arm_mm[at]),
        unit="mm",
        source=_ARMS,
    )
    return bite, tangential, normal, both


def kappa_term(result: CutResult) -> Term:
    """Return the ratio of tangential to normal cutting force, ready to put in.

    result: of `work_cut`.
    """
    return Term(
        symbol="kappa", value=result.material.kappa, digits=3, meaning="tangential over normal cutting force"
    )


def _bite(result: CutResult, place: Place, wheel: Term) -> Working:
    cutting, at = result.cutting, place.index
    return Working(
        what="angle from the bare contact to where the removal is centred, two thirds up the bite's arc",
        symbol="beta",
        formula="120 / pi * sqrt(2 * d * rho / (R * (R + rho)))",
        terms=(
            PI,
            Term(
                symbol="d",
                value=float(cutting.plan.depth_mm[at]),
                unit="mm",
                digits=3,
                meaning="depth of the bite",
            ),
            Term(
                symbol="rho",
                value=float(cutting.plan.radius_mm[1:][at]),
                unit="mm",
                digits=3,
                meaning="distance of the rim from the chuck axis after this turn",
            ),
            wheel,
        ),
        value=math.degrees(float(cutting.touch.bite_rad[at])),
        unit="degrees",
        digits=3,
        source=_ARMS,
    )


def torque_working(result: CutResult, place: Place, force: Working, arm: Working) -> Working:
    """Return the cutting torque at one place.

    result: of `work_cut`; place: which angle of which turn; force, arm: their workings there.
    """
    return Working(
        what="cutting torque, peaks included",
        symbol="M_cut",
        formula="k_dyn * F_t * abs(arm)",
        terms=(
            Term(
                symbol="k_dyn",
                value=result.bench.dynamic_factor,
                digits=3,
                meaning="peak over mean cutting force",
            ),
            force.as_term(),
            arm.as_term(),
        ),
        value=float(result.cutting.torque_nmm[place.index]),
        unit="N mm",
        digits=1,
    )
