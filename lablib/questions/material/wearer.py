"""A question about a wearer: which material and coat, and for which reason."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.power import written_power
from lablib.questions.material.wearer_offers import Offer, Wearer, wearers
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_NEED, _BEARS, _CAUSE = (
    "what this wearer needs most",
    "what a material bears",
    "which property does what",
)
# By the slip of an offer: the step it fails in, and what was done.
_SLIPS = {
    "usual-lens": (_NEED, "You took what is usual."),
    "highest-index": (_CAUSE, "You took a higher index for the cure."),
    "hardness": (_BEARS, "You took hard for tough."),
    "coat-left-out": (_NEED, "You left out a coat that is needed."),
    "coat-for-the-wrong-thing": (_CAUSE, "You took a coat for what it does not do."),
    "weight": (_CAUSE, "You took the heaviest material."),
    "colour": (_CAUSE, "You took a material of low Abbe number."),
    "abbe-number-turned-over": (_CAUSE, "You turned the Abbe number over."),
    "too-dark": (_NEED, "You took light off that is needed, or all light alike."),
    "filter-misused": (_CAUSE, "You took a filter that does not do its work here."),
    "tint-after-the-coats": (_BEARS, "You had it tinted after its coats."),
    "usual-bath-for-every-material": (_BEARS, "You put a material into the bath that does not bear it."),
    "too-thin": (_NEED, "You took a safety lens that is too thin."),
    "marking-left-out": (_NEED, "You took a safety lens without its marking."),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class WearerCase:
    """A wearer with a power, and the offers in the order shown.

    key: of `wearers`; power_d: sphere [D]; places: of the offers in the order shown.
    """

    key: str
    power_d: float
    places: tuple[int, ...]

    @property
    def wearer(self) -> Wearer:
        """The wearer."""
        return wearers()[self.key]

    @property
    def offers(self) -> tuple[Offer, ...]:
        """The offers in the order shown."""
        return tuple(self.wearer.offers[place] for place in self.places)


class MaterialForWearer(Maker[WearerCase]):
    """Choose material and coat for a wearer, with the reason."""

    name = "material-for-wearer"
    lesson = "04"
    skill = "material-for-a-wearer"
    slips = tuple(Slip(name=name, step=step, words=words) for name, (step, words) in _SLIPS.items())

    def draw(self, draws: Draws) -> WearerCase:
        """Return a wearer, a power other than none, and an order of the offers."""
        one = draws.one_of(tuple(wearers().values()))
        power = draws.until("a power", lambda drawn: drawn.step(*one.power), lambda value: value != 0.0)
        return WearerCase(key=one.key, power_d=power, places=draws.shuffled(range(len(one.offers))))

    def kind(self, case: WearerCase) -> ChoiceAnswer:
        """Return the offers, each with the reason somebody gives."""
        return ChoiceAnswer(
            options=tuple(Option(key=_key(offer), words=offer.words) for offer in case.offers)
        )

    def slips_in(self, case: WearerCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong offer, with what is wrong with it."""
        found = {slip.name: slip for slip in self.slips}
        return tuple(
            replace(found[offer.slip], words=f"{found[offer.slip].words} {offer.told}")
            for offer in case.offers
            if offer.slip
        )

    def answer(self, case: WearerCase, slips: Set[str] = NONE) -> str:
        """Return the offer nothing stands against, or the one a slip leads to."""
        wrong = next((offer for offer in case.offers if offer.slip in slips), None)
        return _key(wrong or case.wearer.right(case.power_d))

    def pairs(self, case: WearerCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong offer has its own slip."""
        return ()

    def prompt(self, case: WearerCase) -> tuple[str, ...]:
        """Return the wearer and what is asked."""
        return (
            f"An invented wearer. {case.wearer.words.format(power=written_power(case.power_d))}",
            "Which of these do you choose, and for which reason?",
        )

    def solution(self, case: WearerCase) -> Solution:
        """Return what decides, and what is wrong with each of the others."""
        right = case.wearer.right(case.power_d)
        wrong = [offer for offer in case.offers if offer.slip]
        return Solution(
            words=(
                f"{right.words[0].upper()}{right.words[1:]}.",
                case.wearer.why,
                *(f'Not "{offer.words}". {offer.told}' for offer in wrong),
            )
        )

    def hints(self, case: WearerCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What does this wearer need most, and what would go wrong without it?",
            "Index makes thin, the Abbe number keeps colour away, density makes weight. Toughness, holes and "
            "the bath hang on none of these: each material has its own.",
            "Check the reason of each option as well as the material: is it true?",
        )


def _key(offer: Offer) -> str:
    """Return the key of an offer: its slip's name, or that of the material that is right."""
    return offer.slip or "right"
