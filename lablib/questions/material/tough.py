"""A question about toughness: which material bears knocks."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.care import care
from lablib.optics.fitness import fitness
from lablib.optics.material import material
from lablib.optics.material_order import MaterialOrder
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_TOUGH = ("urethane-1.53", "polycarbonate-1.59")
_HIGH = ("thiourethane-1.67", "episulfide-1.74")
_HARD, _USUAL = "crown-glass-1.523", "hard-resin-1.50"
_WEARERS = (
    ("child", "a girl of six who has bent her frame twice this year"),
    ("child", "a boy of nine who plays ball in every break"),
    ("child", "a child of four in her first spectacles"),
    ("one eye", "a man who sees with one eye only"),
    ("one eye", "a woman whose left eye is blind, and who rides a bicycle to work"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ToughCase:
    """Who it is for, and four materials.

    wearer: as an order has it; words: who it is.
    offered: names of materials, in the order shown.
    """

    wearer: str
    words: str
    offered: tuple[str, ...]


class TougherMaterial(Maker[ToughCase]):
    """Which of four materials a child or a one-eyed wearer gets."""

    name = "tougher-material"
    lesson = "04"
    skill = "toughness"
    slips = (
        Slip(
            name="index-for-toughness",
            step="what makes a material tough",
            words="You took the highest index for the toughest. Index says how much light is bent, nothing "
            "else; the highest is among the most brittle resins.",
        ),
        Slip(
            name="hardness-for-toughness",
            step="what makes a material tough",
            words="You took glass. It is hard and scratches least, but hard is not tough: it breaks into "
            "splinters.",
        ),
        Slip(
            name="usual-for-tough",
            step="who the lens is for",
            words="You took what most people wear. It bears ordinary wear; this wearer needs what bears "
            "most.",
        ),
    )

    def draw(self, draws: Draws) -> ToughCase:
        """Return a wearer, one tough material and three that attract."""
        wearer, words = draws.one_of(_WEARERS)
        offered = (draws.one_of(_TOUGH), draws.one_of(_HIGH), _HARD, _USUAL)
        return ToughCase(wearer=wearer, words=words, offered=draws.shuffled(offered))

    def kind(self, case: ToughCase) -> ChoiceAnswer:
        """Return the four materials with their numbers."""
        found = [(name, material(name)) for name in case.offered]
        return ChoiceAnswer(
            options=tuple(
                Option(
                    key=name, words=f"{one.words} (index {one.index:.3f}, density {one.density:.2f} g/cm3)"
                )
                for name, one in found
            )
        )

    def answer(self, case: ToughCase, slips: Set[str] = NONE) -> str:
        """Return the material that may be made for this wearer, or the one a slip leads to."""
        if "index-for-toughness" in slips:
            return max(case.offered, key=lambda name: material(name).index)
        if "hardness-for-toughness" in slips:
            return _HARD
        if "usual-for-tough" in slips:
            return _USUAL
        (right,) = (
            name
            for name in case.offered
            if fitness(MaterialOrder(material=name, wearer=case.wearer)).decision == "make"
        )
        return right

    def pairs(self, case: ToughCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: ToughCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented wearer: {case.words}. The power is weak, the frame has a rim all round, and each "
            "material comes with the coat it needs.",
            "Which of these materials do you choose?",
        )

    def solution(self, case: ToughCase) -> Solution:
        """Return what each of the four bears."""
        right = self.answer(case)
        names = (right, *(name for name in case.offered if name != right))
        return Solution(
            words=(
                *(
                    f"{material(name).words.capitalize()}: {_ended(care(name).toughness_words)}"
                    for name in names
                ),
                "Children and one-eyed wearers get the material that bears most. No lens is unbreakable, and "
                "nobody is told that one is.",
            )
        )

    def hints(self, case: ToughCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What could happen to these lenses, and what would it cost this wearer?",
            "Index tells how light is bent and density how heavy it is. Which of the four gives before it "
            "breaks?",
        )


def _ended(words: str) -> str:
    return words if words.endswith(".") else f"{words}."
