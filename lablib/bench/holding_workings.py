"""What holds the lens, as workings: block, clamp, every joint, back tip, and both loads together."""

from lablib.bench.contact import r_eff_mm
from lablib.bench.cutting_workings import PI, kappa_term
from lablib.bench.holding import Joint, most_clamp_n
from lablib.bench.margin import CutResult
from lablib.working import Term, Working

_SLIPPING = "a contact slipping all over, even shear strength and even pressure (derived)"
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
        _joint(joint, number, (*shape, clamp[-1]))
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
    most = Term(symbol="N_top", value=most_clamp_n(), unit="N", digits=0, meaning="the most a chuck gives")
    cap = _cap(result, most)
    return cap, _newton("clamp force", "N", "min(N_0, N_max)", (usual, cap.as_term()), held.clamp_force_n)


def _newton(what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float) -> Working:
    return Working(what=what, symbol=symbol, formula=formula, terms=terms, value=value, unit="N", digits=1)


def _cap(result: CutResult, most: Term) -> Working:
    bench, thickness = result.bench, result.lens.centre_thickness_mm
    bending = (
        Term(symbol="sigma_a", value=bench.allowed_stress_mpa, unit="MPa", digits=1, meaning="stress borne"),
        Term(symbol="t_c", value=thickness, unit="mm", digits=3, meaning="centre thickness"),
        Term(symbol="c_p", value=bench.plate_factor, digits=3, meaning="bending of a plate"),
        Term(symbol="chi", value=bench.bending_share, digits=3, meaning="share of it in a clamped lens"),
    )
    formula = "min(N_top, sigma_a * t_c^2 / (c_p * chi))" if bench.bending_share else "N_top"
    return Working(
        what="clamp force this lens bears",
        symbol="N_max",
        formula=formula,
        terms=(most, *bending) if bench.bending_share else (most,),
        value=result.holding.clamp_cap_n,
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
        source=_SLIPPING,
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


def _joint(joint: Joint, number: int, put_in: tuple[Working, Working, Working]) -> tuple[Working, ...]:
    """Strength and friction where something takes from them, then the torque; a core has no friction."""
    turning, radius, clamp = (step.as_term() for step in put_in)
    shear, friction = _shear(joint, number), _friction(joint, number)
    steps = [step for step in (shear, friction) if len(step.terms) > 1]
    slides = joint.friction > 0.0
    torque = Working(
        what=f"torque of {joint.name}",
        symbol=f"T_{number}",
        formula=f"tau_{number} * W" + (f" + mu_{number} * N * r_eff" if slides else ""),
        terms=(shear.as_term(), turning, *((friction.as_term(), clamp, radius) if slides else ())),
        value=joint.torque_nmm,
        unit="N mm",
        digits=1,
        source=_SLIPPING,
    )
    return (*steps, torque)


def _shear(joint: Joint, number: int) -> Working:
    bare = Term(symbol="tau_0", value=joint.strength_mpa, unit="MPa", digits=4, meaning="shear strength")
    shares = (
        Term(symbol="c", value=joint.share, digits=3, meaning="share for these surfaces"),
        Term(symbol="m", value=joint.aged[0], digits=3, meaning="left by the pad's age"),
        Term(symbol="s", value=joint.soiled[0], digits=3, meaning="left by what lies on the lens"),
        Term(symbol="e", value=joint.warmth, digits=4, meaning="factor of the temperature"),
    )
    what = f"shear strength of {joint.name}"
    return _product(what, f"tau_{number}", bare, shares, joint.shear_mpa, digits=5)


def _friction(joint: Joint, number: int) -> Working:
    bare = Term(symbol="mu_0", value=joint.bare_friction, digits=3, meaning="friction, fresh and clean")
    shares = (
        Term(symbol="m", value=joint.aged[1], digits=3, meaning="left by the pad's age"),
        Term(symbol="s", value=joint.soiled[1], digits=3, meaning="left by what lies on the lens"),
    )
    return _product(f"friction of {joint.name}", f"mu_{number}", bare, shares, joint.friction, digits=4)


def _product(
    what: str, symbol: str, bare: Term, shares: tuple[Term, ...], value: float, *, digits: int
) -> Working:
    """Only the shares that change something are written."""
    terms = (bare, *(term for term in shares if term.value != 1.0))
    formula = " * ".join(term.symbol for term in terms)
    return Working(
        what=what, symbol=symbol, formula=formula, terms=terms, value=value, unit=bare.unit, digits=digits
    )


def _together(
    result: CutResult, front: Working, radius: Working, clamp: Working, arm: Working
) -> tuple[Working, ...]:
    """Back tip, both ends together, then the sideways load that eats torque."""
    back, whole = _back(result, front, clamp)
    sideways = _sideways(result, front, radius, clamp)
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
    return back, whole, sideways, share, capacity, hold


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
        source=_SLIPPING,
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


def _sideways(result: CutResult, front: Working, radius: Working, clamp: Working) -> Working:
    held = result.holding
    return Working(
        what="sideways load held with no torque",
        symbol="F_0",
        formula="T_front / r_eff + mu_b * N * q_F",
        terms=(
            front.as_term("front stack"),
            radius.as_term(),
            Term(symbol="mu_b", value=held.back_friction, digits=4, meaning="friction of the back tip"),
            clamp.as_term(),
            Term(symbol="q_F", value=held.back_force_fit, digits=3, meaning="share of an even fit's force"),
        ),
        value=held.force_n,
        unit="N",
        digits=2,
    )
