"""Wet or dry, and on which wheel, as a question: by the material that is cut."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.machine import lens_material, material_names
from lablib.questions.cutting.force import named
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_WAYS = {
    "wet": "roughed wet and finished wet, on wheels for plastics",
    "dry": "roughed dry or nearly so, finished wet, on wheels for plastics",
    "all-dry": "roughed and finished dry, on wheels for plastics",
    "glass": "roughed and finished wet, on wheels for glass",
}
_WORDS = {
    "wet": "You took wheels for plastics, wet.",
    "dry": "You roughed it dry.",
    "all-dry": "You left water out of finishing too.",
    "glass": "You took wheels for glass.",
}
_PLASTICS_WHY = (
    "Water carries the heat off and washes the wheel; dry, warm swarf of this resin smears and loads it. "
    "Wheels for plastics and for glass are never exchanged."
)
_TOUGH_WHY = (
    "Polycarbonate comes off as tough ribbons: wet they pack the wheel, dry they fly off. So it is roughed "
    "dry or nearly so where the machine's manual says it, and finished wet, with its dust extracted."
)
_GLASS_WHY = (
    "Glass is ground wet, in small bites, on wheels of its own: on a wheel for plastics it ruins the wheel, "
    "and a wheel for glass clogs with plastic."
)
_BENCHES = (
    "the morning's first lens",
    "a remade lens that is due at noon",
    "one lens of a pair",
    "a lens for the shop window",
    "the last lens of the day",
    "a scrap lens to practise on",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterCase:
    """A material to cut: its name, which job it is, keys of the options in the order shown."""

    material: str
    job: str
    shown: tuple[str, ...]


class WetOrDry(Maker[WaterCase]):
    """Say how a material is roughed and finished."""

    name = "wet-or-dry"
    lesson = "11"
    skill = "wet-and-dry"
    slips = tuple(
        Slip(name=f"{key}-taken", step="what the material asks of wheel and water", words=words)
        for key, words in _WORDS.items()
    )

    def draw(self, draws: Draws) -> WaterCase:
        """Return a material; polycarbonate and glass come up as often as all the resins together."""
        resins = tuple(name for name in material_names() if _way(name) == "wet")
        others = tuple(name for name in material_names() if _way(name) != "wet")
        return WaterCase(
            material=draws.one_of(draws.one_of((resins, others))),
            job=draws.one_of(_BENCHES),
            shown=draws.shuffled(tuple(_WAYS)),
        )

    def kind(self, case: WaterCase) -> ChoiceAnswer:
        """Return four ways."""
        return ChoiceAnswer(options=tuple(Option(key=key, words=_WAYS[key]) for key in case.shown))

    def answer(self, case: WaterCase, slips: Set[str] = NONE) -> str:
        """Return the way of the material; a slip is named after the way it takes."""
        taken = next(iter(slips), None)
        return _way(case.material) if taken is None else taken.removesuffix("-taken")

    def slips_in(self, case: WaterCase) -> tuple[Slip, ...]:
        """Return the three wrong ones, with what this material asks."""
        return tuple(
            replace(slip, words=f"{slip.words} {_why(case.material)}")
            for slip in self.slips
            if slip.name != f"{_way(case.material)}-taken"
        )

    def pairs(self, case: WaterCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: WaterCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"On an invented bench lies {case.job}, of {named(case.material)}. The machine's manual says "
            "what is usual.",
            "How is this lens cut?",
        )

    def solution(self, case: WaterCase) -> Solution:
        """Return the way, and why."""
        return Solution(
            words=(
                f"{_WAYS[_way(case.material)].capitalize()}.",
                _why(case.material),
                "All this is common practice; the machine's manual and the maker of the lens go before it.",
            )
        )

    def hints(self, case: WaterCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "First choose the wheel: is this glass, or a plastic?",
            "Then think of the swarf: is it brittle dust, soft and smearing, or tough and long?",
        )


def _way(material: str) -> str:
    how = lens_material(material)
    return "glass" if how.wheel_kind == "glass" else how.roughed


def _why(material: str) -> str:
    return {"wet": _PLASTICS_WHY, "dry": _TOUGH_WHY, "glass": _GLASS_WHY}[_way(material)]
