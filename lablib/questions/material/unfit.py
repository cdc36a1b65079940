"""Questions about what goes together: which orders are not made as ordered, and what is done with one."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.questions.material.orders import RoomOrder, of_theme, room_orders, themes
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

_SHOWN, _FEWEST, _MOST = 6, 2, 4
_LETTERS = "ABCDEF"
_THROUGH, _BACK = "{}-let-through", "{}-sent-back"
_RIGHT, _AS_IS, _TEMPTS, _REFUSE = "right", "as-ordered", "tempting", "refuse"


@dataclass(frozen=True, slots=True, kw_only=True)
class PileOfOrders:
    """Several orders, each of another theme.

    keys: of `room_orders`, in the order shown.
    """

    keys: tuple[str, ...]

    @property
    def orders(self) -> tuple[RoomOrder, ...]:
        """The orders."""
        return tuple(room_orders()[key] for key in self.keys)


def _told(one: RoomOrder) -> str:
    if one.is_sound:
        return f"Make it as ordered. {one.reason}"
    gravest = one.fitness.found[0]
    return f"{gravest.decision.capitalize()} it. {gravest.reason} {gravest.instead}"


def _inside(words: str) -> str:
    """Return an order as it stands inside a sentence; names of materials are small there."""
    return words[0].lower() + words[1:]


def _pile_slip(one: RoomOrder) -> Slip:
    """The mistake that can be made with an order in a pile."""
    if one.is_sound:
        return Slip(
            name=_BACK.format(one.theme),
            step="what of an order stands against what",
            words=f"You picked this, and it is made as ordered: {_inside(one.words)}. {one.reason}",
        )
    return Slip(
        name=_THROUGH.format(one.theme),
        step="what of an order stands against what",
        words=f"You left this out, and it is not made as ordered: {_inside(one.words)}. {one.reason}",
    )


def _declared() -> tuple[Slip, ...]:
    """One slip of each name; its words are those of the order it is made with."""
    found = {_pile_slip(one).name: _pile_slip(one) for one in room_orders().values()}
    return tuple(found.values())


class RefuseUnfit(Maker[PileOfOrders]):
    """Pick the orders that are not made as ordered."""

    name = "refuse-unfit"
    lesson = "04"
    skill = "what-goes-together"
    slips = _declared()

    def draw(self, draws: Draws) -> PileOfOrders:
        """Return two to four orders that do not go together, among others that only look odd."""
        shown = draws.some(themes(), _SHOWN)
        unfit = _FEWEST + draws.whole(_MOST - _FEWEST + 1)
        keys = [draws.one_of(of_theme(theme, sound=at >= unfit)).key for at, theme in enumerate(shown)]
        return PileOfOrders(keys=draws.shuffled(keys))

    def kind(self, case: PileOfOrders) -> SeveralAnswer:
        """Return the orders with a letter each."""
        return SeveralAnswer(
            options=tuple(
                Option(key=one.key, words=f"{letter}: {one.words}")
                for letter, one in zip(_LETTERS, case.orders, strict=True)
            )
        )

    def slips_in(self, case: PileOfOrders) -> tuple[Slip, ...]:
        """Return the slip of each order, those that let something through first."""
        return tuple(_pile_slip(one) for one in sorted(case.orders, key=lambda one: one.is_sound))

    def answer(self, case: PileOfOrders, slips: Set[str] = NONE) -> object:
        """Return the orders that are not made as ordered, or the one that a slip is about."""
        for one in case.orders:
            if _pile_slip(one).name in slips:
                return WrongPick(key=one.key, picked=one.is_sound)
        return frozenset(one.key for one in case.orders if not one.is_sound)

    def pairs(
        self, case: PileOfOrders, kind: SeveralAnswer, known: tuple[object, ...]
    ) -> tuple[Mistake, ...]:
        """Return nothing: each slip is seen by itself."""
        return ()

    def prompt(self, case: PileOfOrders) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Six invented orders lie before you. Powers, frames and distances are in order, and what is not "
            "said is as usual.",
            "Pick every one that is not made as ordered, because two things in it stand against each other: "
            "it is refused, changed or asked about.",
        )

    def solution(self, case: PileOfOrders) -> Solution:
        """Return decision and reason of each, the unfit ones first."""
        lettered = sorted(zip(_LETTERS, case.orders, strict=True), key=lambda pair: pair[1].is_sound)
        return Solution(words=tuple(f"{letter}: {_told(one)}" for letter, one in lettered))

    def hints(self, case: PileOfOrders) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Take each order by itself: the material, what is done to it, the frame, the use and the wearer. "
            "Which two of them meet?",
            "Ask what breaks, what lets too little light through, what takes no dye, and what turns along.",
            "An order that is unusual is still made when nothing in it stands against anything else.",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OneOrder:
    """One order, and its options in the order shown.

    key: of `room_orders`; shown: keys of the options.
    """

    key: str
    shown: tuple[str, ...]

    @property
    def order(self) -> RoomOrder:
        """The order."""
        return room_orders()[self.key]


class DecideOrder(Maker[OneOrder]):
    """Make, change, hold or refuse one order, with what is offered in its place."""

    name = "decide-order"
    lesson = "04"
    skill = "what-goes-together"
    slips = (
        Slip(
            name="made-as-ordered",
            step="what of an order stands against what",
            words="You had it made as ordered.",
        ),
        Slip(
            name="half-measure",
            step="whether a cure reaches the cause",
            words="You changed something that does not reach the cause.",
        ),
        Slip(
            name="refused-too-soon",
            step="what is refused, and what is changed or asked about",
            words="You refused an order that has to be changed, or asked about, and can then be made.",
        ),
        Slip(
            name="sound-order-doubted",
            step="what of an order stands against what",
            words="You did not make an order that is sound.",
        ),
        Slip(
            name="sound-order-refused",
            step="what of an order stands against what",
            words="You refused an order that is sound.",
        ),
    )

    def draw(self, draws: Draws) -> OneOrder:
        """Return an order of any theme, two of three of them unfit."""
        theme, sound = draws.one_of(themes()), draws.whole(3) == 0
        one = draws.one_of(of_theme(theme, sound=sound))
        options = [_RIGHT, _TEMPTS]
        if not sound:
            options.append(_AS_IS)
        if one.fitness.decision != "refuse":
            options.append(_REFUSE)
        return OneOrder(key=one.key, shown=draws.shuffled(options))

    def kind(self, case: OneOrder) -> ChoiceAnswer:
        """Return what can be done."""
        words = {
            _RIGHT: case.order.decision_words,
            _TEMPTS: case.order.tempts,
            _AS_IS: "make it as ordered",
            _REFUSE: "refuse it, and offer another lens",
        }
        return ChoiceAnswer(options=tuple(Option(key=key, words=words[key]) for key in case.shown))

    def slips_in(self, case: OneOrder) -> tuple[Slip, ...]:
        """Return one slip for each wrong option, with the reason that belongs to this order."""
        wanted = {"made-as-ordered", "half-measure", "refused-too-soon"}
        if case.order.is_sound:
            wanted = {"sound-order-doubted", "sound-order-refused"}
        elif _REFUSE not in case.shown:
            wanted.discard("refused-too-soon")
        return tuple(
            replace(slip, words=f"{slip.words} {case.order.reason}")
            for slip in self.slips
            if slip.name in wanted
        )

    def answer(self, case: OneOrder, slips: Set[str] = NONE) -> str:
        """Return the decision, or the option a slip leads to."""
        if "made-as-ordered" in slips:
            return _AS_IS
        if slips & {"sound-order-refused", "refused-too-soon"}:
            return _REFUSE
        return _TEMPTS if slips else _RIGHT

    def pairs(self, case: OneOrder, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: OneOrder) -> tuple[str, ...]:
        """Return the order and what is asked."""
        return (
            f"An invented order: {_inside(case.order.words)}.",
            "What do you do with it?",
        )

    def solution(self, case: OneOrder) -> Solution:
        """Return decision and reason."""
        return Solution(words=(_told(case.order),))

    def hints(self, case: OneOrder) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which two things in this order meet: material, treatment, frame, use, wearer, tool? Do they "
            "bear each other?",
            "Where something is against the order, ask whether an option takes the cause away or only makes "
            "it smaller.",
        )
