"""What one joint holds in its condition, as a question: age and dirt count where they lie."""

from collections.abc import Set
from dataclasses import replace

from lablib.bench.contact import r_eff_mm
from lablib.bench.setup import Setup
from lablib.optics.terms import in_full
from lablib.questions.bench_stack.words import NEWTON_METRES, NMM_PER_NM
from lablib.questions.blocking.condition_case import JOINTS, ConditionCase
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_HOW_STEP = "how two losses go together"
_WHICH_STEP = "which share goes with sticking and which with rubbing"
_WHERE_STEP = "which conditions lie at this joint"
_ADDED = Slip(
    name="losses-added",
    step=_HOW_STEP,
    words="You took both losses off the whole. The second one takes only from what the first has left, so "
    "the shares that are left multiply.",
)
_ONE_SHARE = Slip(
    name="one-share-for-both",
    step=_WHICH_STEP,
    words="You took the share of shear strength for friction as well. Friction suffers less, and has a share "
    "of its own.",
)
_STICKS_ONLY = Slip(
    name="friction-spared",
    step=_WHICH_STEP,
    words="You left friction as if fresh and clean. It suffers too, though less.",
)
_ELSEWHERE = Slip(
    name="condition-of-another-joint",
    step=_WHERE_STEP,
    words="You counted a condition that does not lie at this joint. Age is in the pad's own faces, dirt only "
    "where it lies.",
)
_BOTH = ("shear strength", "friction")
_SKINS = {"fingerprint": "a fingerprint on the lens", "oily": "oil on the lens"}
_SHARES = {
    "age": ("a_s", "a_r", "the pad's age"),
    "skin": ("d_s", "d_r", "what lies on the lens"),
    "block": ("b_s", "b_r", "the block's face"),
}


class JointInItsCondition(Maker[ConditionCase]):
    """Say what a joint holds after age and dirt."""

    name = "joint-in-its-condition"
    lesson = "10"
    skill = "conditions-of-the-grip"
    slips = (_ADDED, _ONE_SHARE, _STICKS_ONLY, _ELSEWHERE)

    def draw(self, draws: Draws) -> ConditionCase:
        """Return a stack with two or three conditions, and a joint at which one or two of them lie."""
        joint = draws.one_of(tuple(JOINTS))
        return ConditionCase(
            setup=Setup(
                coat=draws.one_of(("coated", "slick")),
                film=joint == "film to coat",
                skin=draws.one_of(tuple(_SKINS)),
                pad_age_months=draws.step(2.0, 12.0, 1.0),
                block_face=draws.one_of(("worn", "dirty")),
                clamp_force_n=draws.step(200.0, 300.0, 10.0),
            ),
            joint=joint,
        )

    def kind(self, case: ConditionCase) -> NumberAnswer:
        """Return a torque to 0.01 N m."""
        return NumberAnswer(unit="N m", tolerance=0.01, digits=2)

    def answer(self, case: ConditionCase, slips: Set[str] = NONE) -> float:
        """Return the joint's torque, with its shares changed as the slips would."""
        counted = [case.shares[name] for name in case.here]
        if _ELSEWHERE.name in slips:
            counted = list(case.shares.values())
        if _ONE_SHARE.name in slips:
            counted = [(sticks, sticks) for sticks, _ in counted]
        if _STICKS_ONLY.name in slips:
            counted = [(sticks, 1.0) for sticks, _ in counted]
        left = _product(counted)
        if _ADDED.name in slips:
            left = tuple(1.0 - sum(1.0 - share for share in shares) for shares in zip(*counted, strict=True))
        return replace(case.found(), aged=left, soiled=(1.0, 1.0)).torque_nmm / NMM_PER_NM

    def slips_in(self, case: ConditionCase) -> tuple[Slip, ...]:
        """Return the slips that change something here: with one condition there is nothing to add."""
        return tuple(slip for slip in self.slips if slip is not _ADDED or len(case.here) > 1)

    def prompt(self, case: ConditionCase) -> tuple[str, ...]:
        """Return the stack's conditions and what is asked."""
        setup = case.setup
        film = " A film lies between pad and lens." if setup.film else ""
        return (
            f"In an invented stack the pad is {setup.pad_age_months:g} months old and there is "
            f"{_SKINS[setup.skin]}; the face of the block is {setup.block_face}.{film} A joint holds the "
            "torque T = tau W + mu N r_eff. What each condition leaves of tau and of mu, at the joints where "
            "it lies, is given.",
            f'How much torque does the joint "{case.joint}" hold? Give it in {NEWTON_METRES}, to 0.01 '
            f"{NEWTON_METRES}.",
        )

    def given(self, case: ConditionCase) -> tuple[Term, ...]:
        """Return the joint fresh and clean, contact and clamp, and every share."""
        joint = case.found()
        shares = (
            in_full(symbol, left, "", meaning=f"share of {what} left by {_SHARES[name][2]}")
            for name, both in case.shares.items()
            for symbol, left, what in zip(_SHARES[name][:2], both, _BOTH, strict=True)
        )
        return (
            in_full(
                "tau_0",
                round(joint.strength_mpa * joint.share, 4),
                "MPa",
                meaning="shear strength, fresh and clean",
            ),
            in_full("mu_0", joint.bare_friction, "", meaning="friction, fresh and clean"),
            in_full(
                "W",
                round(joint.contact.w_mm3),
                "mm3",
                least_digits=0,
                meaning="area of the block times its mean arm",
            ),
            in_full(
                "r_eff", round(r_eff_mm(joint.contact), 1), "mm", least_digits=1, meaning="effective radius"
            ),
            in_full("N", joint.clamp_n, "N", least_digits=0, meaning="clamp force"),
            *shares,
        )

    def solution(self, case: ConditionCase) -> Solution:
        """Return shear strength, friction and torque."""
        by_symbol = {term.symbol: term for term in self.given(case)}
        tau = _left("shear strength as it is", "tau", "tau_0", 0, case, by_symbol)
        mu = _left("friction as it is", "mu", "mu_0", 1, case, by_symbol)
        torque = Working(
            what=f"torque of {case.joint}",
            symbol="T",
            formula="(tau * W + mu * N * r_eff) / 1000",
            terms=(
                tau.as_term(),
                by_symbol["W"],
                mu.as_term(),
                by_symbol["N"],
                by_symbol["r_eff"],
            ),
            value=self.answer(case),
            unit="N m",
            digits=3,
        )
        here = " and ".join(_SHARES[name][2] for name in case.here)
        return Solution(
            words=(
                f"At the joint {case.joint} this counts: {here}. Shares that are left multiply, and shear "
                f"strength and friction have each their own. MPa times mm3, like N times mm, is N mm: a "
                f"thousand of them are one {NEWTON_METRES}.",
                "At the bench no lens is blocked with anything on it, nor on a worn or dirty block: clean "
                "the lens, take another block, and a fresh pad.",
            ),
            workings=(tau, mu, torque),
        )

    def hints(self, case: ConditionCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which two surfaces meet at this joint? Only what is on or in one of them counts.",
            "Bring shear strength and friction to what they are now, each with its own shares. Then work out "
            f"the torque: in N mm first, and a thousand of them are one {NEWTON_METRES}.",
        )


def _product(shares: list[tuple[float, float]]) -> tuple[float, float]:
    sticks, rubs = 1.0, 1.0
    for one, other in shares:
        sticks, rubs = sticks * one, rubs * other
    return sticks, rubs


def _left(
    what: str, symbol: str, bare: str, which: int, case: ConditionCase, terms: dict[str, Term]
) -> Working:
    shares = tuple(terms[_SHARES[name][which]] for name in case.here)
    product = terms[bare].value * _product([case.shares[name] for name in case.here])[which]
    return Working(
        what=what,
        symbol=symbol,
        formula=" * ".join((bare, *(share.symbol for share in shares))),
        terms=(terms[bare], *shares),
        value=product,
        unit=terms[bare].unit,
        digits=5,
    )
