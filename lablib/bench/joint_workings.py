"""One joint of the front stack, as workings: what its condition leaves, its torque and its sideways load."""

from lablib.bench.joints import Joint
from lablib.working import Term, Working

SLIPPING = "a contact slipping all over, even shear strength and even pressure (derived)"
_SPRINGS = "foundation of springs under block and pad (derived)"


def joint_workings(
    joint: Joint, number: int, put_in: tuple[Working, Working, Working]
) -> tuple[Working, ...]:
    """Return strength and friction where something takes from them, then the torque; a core has no friction.

    joint: one of the front; number: its place, from 1.
    put_in: the workings of W, of the effective radius and of the clamp force.
    """
    turning, radius, clamp = (step.as_term() for step in put_in)
    shear, friction = _shear(joint, number), _friction(joint, number)
    steps = [step for step in (shear, friction) if len(step.terms) > 1]
    slides = joint.friction > 0.0
    touching, leaning = _bearing_terms(joint)
    sticks = " * ".join(("", *(term.symbol for term in touching)))
    rubs = " * ".join(("", *(term.symbol for term in leaning)))
    torque = Working(
        what=f"torque of {joint.name}",
        symbol=f"T_{number}",
        formula=f"tau_{number} * W{sticks}" + (f" + mu_{number} * N * r_eff{rubs}" if slides else ""),
        terms=(
            shear.as_term(),
            turning,
            *touching,
            *((friction.as_term(), clamp, radius, *leaning) if slides else ()),
        ),
        value=joint.torque_nmm,
        unit="N mm",
        digits=1,
        source=SLIPPING,
    )
    return (*steps, torque)


def _bearing_terms(joint: Joint) -> tuple[tuple[Term, ...], tuple[Term, ...]]:
    """What touches, and how far out it presses, where that is not as on an even contact."""
    touches = Term(symbol="u_W", value=joint.bearing.turning, digits=4, meaning="share of W that touches")
    leans = Term(
        symbol="q_r", value=joint.bearing.friction_radius, digits=4, meaning="friction radius over r_eff"
    )
    return tuple((term,) if term.value != 1.0 else () for term in (touches, leans))


def force_workings(joints: tuple[Joint, ...], area: Working, clamp: Working) -> tuple[Working, ...]:
    """Return what each joint bears sideways, and the least of them: for joints that do not bear evenly.

    joints: of the front; area: the working of the contact's area; clamp: that of the clamp force.
    """
    steps = tuple(_force(joint, number, area, clamp) for number, joint in enumerate(joints, start=1))
    front = Working(
        what="front stack sideways: the weakest joint governs",
        symbol="F_front",
        formula=f"min({', '.join(step.symbol for step in steps)})",
        terms=tuple(step.as_term() for step in steps),
        value=min(joint.force_n for joint in joints),
        unit="N",
        digits=2,
    )
    return *steps, front


def _force(joint: Joint, number: int, area: Working, clamp: Working) -> Working:
    shear, friction = _shear(joint, number), _friction(joint, number)
    touches = Term(symbol="u_A", value=joint.bearing.area, digits=4, meaning="share of the area that touches")
    slides = joint.friction > 0.0
    return Working(
        what=f"sideways load of {joint.name}",
        symbol=f"F_{number}",
        formula=f"tau_{number} * A * u_A" + (f" + mu_{number} * N" if slides else ""),
        terms=(
            shear.as_term(),
            area.as_term(),
            touches,
            *((friction.as_term(), clamp.as_term()) if slides else ()),
        ),
        value=joint.force_n,
        unit="N",
        digits=2,
        source=_SPRINGS,
    )


def _shear(joint: Joint, number: int) -> Working:
    bare = Term(symbol="tau_0", value=joint.strength_mpa, unit="MPa", digits=4, meaning="shear strength")
    shares = (
        Term(symbol="c", value=joint.share, digits=3, meaning="share for these surfaces"),
        Term(symbol="m", value=joint.aged[0], digits=3, meaning="left by the pad's age"),
        Term(symbol="s", value=joint.soiled[0], digits=3, meaning="left by what lies on the face"),
        Term(symbol="e", value=joint.warmth, digits=4, meaning="factor of the temperature"),
    )
    what = f"shear strength of {joint.name}"
    return _product(what, f"tau_{number}", bare, shares, joint.shear_mpa, digits=5)


def _friction(joint: Joint, number: int) -> Working:
    bare = Term(symbol="mu_0", value=joint.bare_friction, digits=3, meaning="friction, fresh and clean")
    shares = (
        Term(symbol="m", value=joint.aged[1], digits=3, meaning="left by the pad's age"),
        Term(symbol="s", value=joint.soiled[1], digits=3, meaning="left by what lies on the face"),
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
