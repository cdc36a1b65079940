"""A question about the order of operations on a lens."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.operations import BeforeRule, before_rules, in_order, operations
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Earlier, Option, OrderAnswer
from lablib.study.question import Mistake, Slip, Solution

_STORIES = {
    "plastics": (
        "An invented pair of hard resin, from the blank: it is to be tinted in the bath, and gets a hard "
        "coat and an anti-reflection coat."
    ),
    "glass": "An invented pair of crown glass, from the blank. It is to be hardened.",
}
_CORE = {
    "plastics": ("tint", "hard-coat", "anti-reflection", "edge"),
    "glass": ("surface", "edge", "harden", "drop-ball", "mount"),
}
_MORE = (("surface",), ("mount",), ("surface", "mount"), ("drill", "mount"), ("surface", "drill", "mount"))
# Mistakes people make, by the rule that they break; the others hardly happen.
_USUAL = (
    "tint-before-anti-reflection",
    "tint-before-hard-coat",
    "hard-coat-before-anti-reflection",
    "coat-before-edging",
    "surface-before-tint",
    "edge-before-hardening",
    "hardening-before-drop-ball",
    "drop-ball-before-mounting",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class StepsCase:
    """Operations on one lens.

    kind: of its material, "plastics" or "glass"; shown: operations in the order shown.
    """

    kind: str
    shown: tuple[str, ...]


def _slip(rule: BeforeRule) -> Slip:
    words = operations()
    return Slip(
        name=f"breaks-{rule.name}",
        step="what a lens must bear after each operation",
        words=f'You put "{words[rule.then]}" before "{words[rule.first]}". {rule.reason}',
    )


class OperationsOrder(Maker[StepsCase]):
    """Put the operations on a lens in order."""

    name = "operations-order"
    lesson = "04"
    skill = "order-of-operations"
    rules = tuple(rule for name in _USUAL for rule in before_rules() if rule.name == name)
    slips = tuple(_slip(rule) for rule in rules)

    def draw(self, draws: Draws) -> StepsCase:
        """Return operations of which the rules leave one order, never shown in it."""
        kind = draws.one_of(("plastics", "plastics", "glass"))
        more = draws.one_of(_MORE) if kind == "plastics" else ()
        shown = draws.shuffled((*_CORE[kind], *more))
        if shown == in_order(shown, kind=kind):
            shown = (*shown[1:], shown[0])
        return StepsCase(kind=kind, shown=shown)

    def kind(self, case: StepsCase) -> AnswerKind:
        """Return the operations as they are shown."""
        return OrderAnswer(options=tuple(Option(key=key, words=_begun(key)) for key in case.shown))

    def answer(self, case: StepsCase, slips: Set[str] = NONE) -> object:
        """Return the order, or which two operations a slip exchanges."""
        for rule in self.rules:
            if _slip(rule).name in slips:
                return Earlier(first=rule.then, second=rule.first)
        return in_order(case.shown, kind=case.kind)

    def slips_in(self, case: StepsCase) -> tuple[Slip, ...]:
        """Return the slips whose two operations are both shown."""
        return tuple(
            _slip(rule)
            for rule in self.rules
            if {rule.first, rule.then} <= set(case.shown) and rule.only in (None, case.kind)
        )

    def pairs(self, case: StepsCase, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each exchange is seen by itself."""
        return ()

    def prompt(self, case: StepsCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        holes = " The frame holds it by drilled holes." if "drill" in case.shown else ""
        return (
            f"{_STORIES[case.kind]}{holes} Some of the operations are left out; these are mixed up.",
            "Put them in the order in which they are done, the first on top.",
        )

    def solution(self, case: StepsCase) -> Solution:
        """Return the order, and the reason of each usual rule."""
        order = ", then ".join(operations()[key] for key in self.answer(case))
        reasons = [rule for rule in self.rules if _slip(rule) in self.slips_in(case)]
        return Solution(
            words=(
                f"In order: {order}.",
                *(
                    f"{_begun(rule.first)} before you {operations()[rule.then]}. {rule.reason}"
                    for rule in reasons
                ),
            )
        )

    def hints(self, case: StepsCase) -> tuple[str, ...]:
        """Return hints."""
        first = "Ask of each operation: what would it do to the ones that are already done?"
        if case.kind == "glass":
            return (
                first,
                "Glass under strain bears no wheel. And a test shows something only of a lens as it is worn.",
            )
        return (
            first,
            "Dye must get into the bare surface, each coat needs a finished ground, and the rim by which a "
            "lens is held for coating is cut away last.",
        )


def _begun(key: str) -> str:
    words = operations()[key]
    return words[0].upper() + words[1:]
