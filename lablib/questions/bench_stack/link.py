"""What a stack holds before sideways load, as a question: the weakest joint, and the back tip beside it."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.holding import stack_torque_nmm
from lablib.bench.setup import Setup
from lablib.questions.bench_stack.words import CAUTION, NEWTON_METRES, NMM_PER_NM, held, lens_words
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

_FRONT_STEP = "which joint of the front counts"
_SIDES_STEP = "front and back side by side"
_FILM_STEP = "what the film replaces"
_ADDED = Slip(
    name="front-joints-added",
    step=_FRONT_STEP,
    words="You added the front joints up. They are a chain: it lets go at its weakest link, and the others "
    "add nothing.",
)
_STRONGEST = Slip(
    name="strongest-joint-taken",
    step=_FRONT_STEP,
    words="You took the strongest front joint. A chain lets go at its weakest link.",
)
_LEAST = Slip(
    name="least-of-front-and-back",
    step=_SIDES_STEP,
    words="You took the lesser of front and back. The lens is held from both sides at once, so what both "
    "hold adds up.",
)
_NO_BACK = Slip(
    name="back-tip-left-out",
    step=_SIDES_STEP,
    words="You left the back tip out. It presses on the other side of the lens and holds beside the front.",
)
_REPLACED = Slip(
    name="replaced-joint-counted",
    step=_FILM_STEP,
    words="You counted the joint that the film replaces. The pad no longer touches the lens, so that joint "
    "is not in the chain.",
)
_EXTRA = Slip(
    name="film-as-extra-strength",
    step=_FILM_STEP,
    words="You added the film's joint to the joint it replaces. A film takes that joint out of the chain; it "
    "does not hold beside it.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class StackCase:
    """A stack with the torques of its joints as they are printed, to 0.01 N m.

    setup: what is chosen for it.
    names, front_nmm: of the front joints from block to lens, and what each carries [N mm].
    back_nmm: what the back tip carries [N mm].
    replaced: the joint that a film replaces; empty without a film. replaced_nmm: what it would carry [N mm].
    """

    setup: Setup
    names: tuple[str, ...]
    front_nmm: tuple[float, ...]
    back_nmm: float
    replaced: str = ""
    replaced_nmm: float = 0.0

    @classmethod
    def of(cls, setup: Setup) -> "StackCase":
        """Return the case of a setup.

        setup: what is chosen.
        """
        held_by = held(setup)
        bare = held(replace(setup, film=False)).joints[-1]
        return cls(
            setup=setup,
            names=tuple(joint.name for joint in held_by.joints),
            front_nmm=tuple(_as_printed_nmm(joint.torque_nmm) for joint in held_by.joints),
            back_nmm=_as_printed_nmm(held_by.back_nmm),
            replaced=bare.name if setup.film else "",
            replaced_nmm=_as_printed_nmm(bare.torque_nmm) if setup.film else 0.0,
        )


def _as_printed_nmm(torque_nmm: float) -> float:
    return round(torque_nmm, -1)


def _in_nm(torque_nmm: float) -> float:
    return torque_nmm / NMM_PER_NM


def _term(symbol: str, torque_nmm: float, meaning: str) -> Term:
    return Term(symbol=symbol, value=_in_nm(torque_nmm), unit="N m", meaning=meaning)


def _joint_terms(case: StackCase) -> tuple[Term, ...]:
    return tuple(
        _term(f"T_{number}", torque, name)
        for number, (name, torque) in enumerate(zip(case.names, case.front_nmm, strict=True), start=1)
    )


class WeakestLink(Maker[StackCase]):
    """Say what front and back hold together."""

    name = "weakest-link"
    lesson = "01"
    skill = "what-holds-a-lens"
    slips = (_ADDED, _STRONGEST, _LEAST, _NO_BACK, _REPLACED, _EXTRA)

    def draw(self, draws: Draws) -> StackCase:
        """Return a stack, with a film mostly where the coat is slick."""
        coat = draws.one_of(("coated", "slick", "slick"))
        return StackCase.of(
            Setup(
                coat=coat,
                film=draws.one_of((False, coat == "slick")),
                skin=draws.one_of(("clean", "clean", "fingerprint", "oily")),
                pad_age_months=draws.step(0.0, 12.0, 3.0),
                clamp_force_n=draws.step(200.0, 340.0, 20.0),
            )
        )

    def kind(self, case: StackCase) -> AnswerKind:
        """Return a torque to 0.01 N m."""
        return NumberAnswer(unit="N m", tolerance=0.01, digits=2)

    def answer(self, case: StackCase, slips: Set[str] = NONE) -> object:
        """Return what the stack holds, or what is thought to hold."""
        front, back = case.front_nmm, case.back_nmm
        if _EXTRA.name in slips:
            front = (case.replaced_nmm + front[-1],)
        if _REPLACED.name in slips:
            front = (*front, case.replaced_nmm)
        if _ADDED.name in slips:
            front = (sum(front),)
        if _STRONGEST.name in slips:
            front = (max(front),)
        if _NO_BACK.name in slips:
            back = 0.0
        if _LEAST.name in slips:
            front, back = (*front, back), 0.0
        return _in_nm(stack_torque_nmm(front, back))

    def slips_in(self, case: StackCase) -> tuple[Slip, ...]:
        """Return the slips that change something here."""
        front = min(case.front_nmm)
        idle = set()
        if case.back_nmm >= front:
            idle.add(_LEAST)
        if not case.replaced or case.replaced_nmm >= front:
            idle.add(_REPLACED)
        if not case.replaced:
            idle.add(_EXTRA)
        return tuple(slip for slip in self.slips if slip not in idle)

    def prompt(self, case: StackCase) -> tuple[str, ...]:
        """Return the stack in words and what is asked."""
        setup = case.setup
        film = " A film lies between pad and lens." if setup.film else ""
        age = f"{setup.pad_age_months:g} months old" if setup.pad_age_months else "new"
        lens = lens_words(setup)
        return (
            f"{lens[0].upper()}{lens[1:]} sits on a round block; the pad is {age}.{film} The greatest torque "
            "each joint bears:",
            "How much torque do front and back hold together, before any sideways load is counted? Give it "
            f"in {NEWTON_METRES}, to 0.01 {NEWTON_METRES}.",
        )

    def given(self, case: StackCase) -> tuple[Term, ...]:
        """Return every joint's torque, the back tip's, and that of the joint a film replaces."""
        back = _term("T_back", case.back_nmm, "back tip")
        if not case.replaced:
            return (*_joint_terms(case), back)
        without = _term("T_bare", case.replaced_nmm, f"{case.replaced}, if there were no film")
        return (*_joint_terms(case), back, without)

    def solution(self, case: StackCase) -> Solution:
        """Return the weakest joint, and the back tip added to it."""
        joints = _joint_terms(case)
        weakest = case.names[case.front_nmm.index(min(case.front_nmm))]
        front = Working(
            what=f"front stack: the weakest joint governs, {weakest}",
            symbol="T_front",
            formula=f"min({', '.join(term.symbol for term in joints)})",
            terms=joints,
            value=_in_nm(min(case.front_nmm)),
            unit="N m",
        )
        whole = Working(
            what="torque held with no sideways load",
            symbol="T_0",
            formula="T_front + T_back",
            terms=(front.as_term("front stack"), _term("T_back", case.back_nmm, "back tip")),
            value=self.answer(case),
            unit="N m",
        )
        film = (
            "The film has replaced one joint: the pad no longer touches the lens. What that joint would have "
            "borne does not count any more, neither for nor against the stack."
        )
        return Solution(
            words=(
                "From block to lens the front joints are a chain, and a chain lets go at its weakest link. "
                "The back tip holds the lens from its other side at the same time, so its torque is added.",
                *((film,) if case.replaced else ()),
                *((CAUTION,) if case.setup.skin != "clean" else ()),
            ),
            workings=(front, whole),
        )

    def hints(self, case: StackCase) -> tuple[str, ...]:
        """Return what is in a row and what is side by side."""
        film = "Go through the list: does each joint exist in this stack?"
        return (
            *((film,) if case.replaced else ()),
            "Which of the joints are links of one chain, and which one works beside the chain?",
            "Find what the front holds by itself first. Then ask what the back does at the same time.",
        )

    def drawing(self, case: StackCase) -> Drawing:
        """Return the joints that there are, and the back tip."""
        return Drawing(
            name="joints",
            values={
                "names": case.names,
                "values": tuple(_in_nm(torque) for torque in case.front_nmm),
                "back": _in_nm(case.back_nmm),
            },
        )
