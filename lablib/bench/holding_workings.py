"""What holds the lens, as workings: block, clamp, every joint, back tip, and both loads together."""

from lablib.bench.contact import r_eff_mm
from lablib.bench.cutting_workings import PI, kappa_term
from lablib.bench.holding import clamp_cap_n, most_clamp_n
from lablib.bench.joint_workings import SLIPPING, force_workings, joint_workings
from lablib.bench.machine import Bench
from lablib.bench.margin import CutResult
from lablib.working import Term, Working

_TOGETHER = (
    "torque and sideways load add in squares (usual engineering form, from memory); that they are coupled: "
    "Farkas et al., Phys. Rev. Lett. 90 (2003) 248302"
)


def hold_workings(result: CutResult, arm: Working) -> tuple[Working, ...]:
    """Return every step to the torque held at the place with the least margin.

    result: of `work_cut`; arm: the working of its lever arm there.
    """
    clamp = _clamp(result)
    shape = _shape(result)
    joints = [
        joint_workings(joint, number, (*shape, clamp[-1]))
        for number, joint in enumerate(result.holding.joints, start=1)
    ]
    torques = [steps[-1] for steps in joints]
    front = Working(
        what=f"front stack: the weakest joint governs, {result.holding.weakest.name}",
        symbol="T_front",
        formula=f"min({', '.join(torque.symbol for torque in torques)})",
        terms=tuple(torque.as_term() for torque in torques),
        value=result.holding.front_nmm,
        unit="N mm",
        digits=1,
    )
    flat = [step for steps in joints for step in steps]
    return (*clamp, *shape, *flat, front, *_together(result, front, shape[-1], clamp[-1], arm))


def _clamp(result: CutResult) -> tuple[Working, ...]:
    """The clamp cap, and the force; nothing to show for the cap of a lens that does not bend."""
    held, bench, setup = result.holding, result.bench, result.setup
    if setup.clamp_force_n is not None:
        terms = (Term(symbol="N_set", value=held.clamp_force_n, unit="N", digits=1, meaning="as set"),)
        return (_newton("clamp force", "N", "N_set", terms, held.clamp_force_n),)
    usual = Term(symbol="N_0", value=bench.clamp_force_n, unit="N", digits=1, meaning="usual clamp force")
    cap = clamp_cap_working(result.lens.centre_thickness_mm, bench, bending_share=held.bending_share)
    return cap, _newton("clamp force", "N", "min(N_0, N_max)", (usual, cap.as_term()), held.clamp_force_n)


def _newton(what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float) -> Working:
    return Working(what=what, symbol=symbol, formula=formula, terms=terms, value=value, unit="N", digits=1)


def clamp_cap_working(
    centre_thickness_mm: float, bench: Bench, *, bending_share: float | None = None
) -> Working:
    """Return the step to the clamp force a lens bears.

    centre_thickness_mm: the thinnest place under the tip [mm]; bench: its bending share and allowed stress.
    bending_share: chi where block and tip press unevenly; None: the bench's own.
    """
    chi = bench.bending_share if bending_share is None else bending_share
    most = Term(symbol="N_top", value=most_clamp_n(), unit="N", digits=0, meaning="the most a chuck gives")
    bending = (
        Term(symbol="sigma_a", value=bench.allowed_stress_mpa, unit="MPa", digits=1, meaning="stress borne"),
        Term(symbol="t_c", value=centre_thickness_mm, unit="mm", digits=3, meaning="centre thickness"),
        Term(symbol="c_p", value=bench.plate_factor, digits=3, meaning="bending of a plate"),
        Term(symbol="chi", value=chi, digits=3, meaning="share of it in a clamped lens"),
    )
    formula = "min(N_top, sigma_a * t_c^2 / (c_p * chi))" if chi else "N_top"
    return Working(
        what="clamp force this lens bears",
        symbol="N_max",
        formula=formula,
        terms=(most, *bending) if chi else (most,),
        value=clamp_cap_n(centre_thickness_mm, bench, bending_share=chi),
        unit="N",
        digits=1,
        source="bending of a thin plate under a central load (derived)",
    )


def _shape(result: CutResult) -> tuple[Working, Working]:
    """W and the effective radius of the block: a circle's by its radius, an ellipse's by its perimeter."""
    contact = result.holding.contact
    width = Term(symbol="a", value=contact.half_width_mm, unit="mm", meaning="half width of the block")
    height = Term(symbol="b", value=contact.half_height_mm, unit="mm", meaning="half height of the block")
    round_block = contact.half_width_mm == contact.half_height_mm
    rim = Term(symbol="U", value=contact.perimeter_mm, unit="mm", digits=3, meaning="perimeter, from a table")
    turning = Working(
        what="integral of the distance from the axis over the block's contact",
        symbol="W",
        formula="2 * pi * a^3 / 3" if round_block else "a * b * U / 3",
        terms=(PI, width) if round_block else (width, height, rim),
        value=contact.w_mm3,
        unit="mm3",
        digits=1,
        source=SLIPPING,
    )
    radius = Working(
        what="effective radius of the block",
        symbol="r_eff",
        formula="W / (pi * a * b)",
        terms=(turning.as_term(), PI, width, height),
        value=r_eff_mm(contact),
        unit="mm",
        digits=3,
    )
    return turning, radius


def _together(
    result: CutResult, front: Working, radius: Working, clamp: Working, arm: Working
) -> tuple[Working, ...]:
    """Back tip, both ends together, then the sideways load that eats torque."""
    back, whole = _back(result, front, clamp)
    *sides, sideways = _sideways(result, front, radius, clamp)
    share = Working(
        what="whole cutting force over tangential force",
        symbol="c_F",
        formula="sqrt(1 + 1 / kappa^2)",
        terms=(kappa_term(result),),
        value=result.cutting.sideways,
        digits=4,
    )
    capacity = Working(
        what="tangential force at which the lens turns",
        symbol="C",
        formula="1 / sqrt((arm / T_0)^2 + (c_F / F_0)^2)",
        terms=(arm.as_term(), whole.as_term(), share.as_term(), sideways.as_term()),
        value=float(result.capacity_n[result.least.index]),
        unit="N",
        digits=3,
        source=_TOGETHER,
    )
    hold = Working(
        what="torque held beside the sideways load",
        symbol="T_hold",
        formula="C * abs(arm)",
        terms=(capacity.as_term(), arm.as_term()),
        value=float(result.hold_nmm[result.least.index]),
        unit="N mm",
        digits=1,
    )
    return back, whole, *sides, sideways, share, capacity, hold


def _back(result: CutResult, front: Working, clamp: Working) -> tuple[Working, Working]:
    held, idle = result.holding, result.setup.back_tip_idles
    terms = (
        Term(symbol="mu_b", value=held.back_friction, digits=4, meaning="friction of the back tip"),
        clamp.as_term(),
        Term(symbol="r_b", value=held.back_radius_mm, unit="mm", digits=3, meaning="effective radius of tip"),
        Term(symbol="q_T", value=held.back_torque_fit, digits=3, meaning="share of an even fit's torque"),
    )
    back = Working(
        what="torque of the back tip, which idles" if idle else "torque of the back tip",
        symbol="T_back",
        formula="0" if idle else "mu_b * N * r_b * q_T",
        terms=() if idle else terms,
        value=held.back_nmm,
        unit="N mm",
        digits=1,
        source=SLIPPING,
    )
    whole = Working(
        what="torque held with no sideways load",
        symbol="T_0",
        formula="T_front + T_back",
        terms=(front.as_term("front stack"), back.as_term("back tip")),
        value=held.torque_nmm,
        unit="N mm",
        digits=1,
    )
    return back, whole


def _sideways(result: CutResult, front: Working, radius: Working, clamp: Working) -> tuple[Working, ...]:
    """F_0: of joints that bear evenly the torque over its radius; others take their minimum apart."""
    held = result.holding
    even = all(joint.bearing.is_even for joint in held.joints)
    steps = () if even else _front_force(result, clamp)
    first = "T_front / r_eff" if even else "F_front"
    whole = Working(
        what="sideways load held with no torque",
        symbol="F_0",
        formula=f"{first} + mu_b * N * q_F",
        terms=(
            *((front.as_term("front stack"), radius.as_term()) if even else (steps[-1].as_term(),)),
            Term(symbol="mu_b", value=held.back_friction, digits=4, meaning="friction of the back tip"),
            clamp.as_term(),
            Term(symbol="q_F", value=held.back_force_fit, digits=3, meaning="share of an even fit's force"),
        ),
        value=held.force_n,
        unit="N",
        digits=2,
    )
    return *steps, whole


def _front_force(result: CutResult, clamp: Working) -> tuple[Working, ...]:
    contact = result.holding.contact
    area = Working(
        what="area of the block's face",
        symbol="A",
        formula="pi * a * b",
        terms=(
            PI,
            Term(symbol="a", value=contact.half_width_mm, unit="mm", meaning="half width of the block"),
            Term(symbol="b", value=contact.half_height_mm, unit="mm", meaning="half height of the block"),
        ),
        value=contact.area_mm2,
        unit="mm2",
        digits=2,
    )
    return area, *force_workings(result.holding.joints, area, clamp)
