"""Questions about weight: of one lens, and which of three is the lightest."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.material_workings import weight_working
from lablib.optics.solid import weight_of_volume_g
from lablib.optics.terms import in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_DENSITIES = (1.11, 1.2, 1.31, 1.32, 1.36, 1.47, 2.54)
_LETTERS = ("A", "B", "C")
_SAME = "same"
# The lightest is lighter than the next by so much.
_CLEAR = 1.05


@dataclass(frozen=True, slots=True, kw_only=True)
class WeightCase:
    """One lens.

    volume_mm3: of the edged lens [mm3]; density: of its material [g/cm3].
    """

    volume_mm3: float
    density: float


class LensWeight(Maker[WeightCase]):
    """The weight of an edged lens."""

    name = "lens-weight"
    lesson = "04"
    skill = "weight"
    slips = (
        Slip(
            name="density-for-weight",
            step="what a density is the weight of",
            words="You gave the density. It is the weight of one cubic centimetre; the lens has another "
            "volume.",
        ),
        Slip(
            name="ten-millimetres-cubed",
            step="cubic millimetres in a cubic centimetre",
            words="You took 100 cubic millimetres for a cubic centimetre. A centimetre is 10 mm along each "
            "of three edges: 1,000.",
        ),
        Slip(
            name="divided-by-density",
            step="whether density multiplies or divides",
            words="You divided by the density. A denser material makes a heavier lens, so multiply.",
        ),
    )

    def draw(self, draws: Draws) -> WeightCase:
        """Return a lens of an ordinary size."""
        return WeightCase(volume_mm3=draws.step(2500.0, 8000.0, 100.0), density=draws.one_of(_DENSITIES))

    def kind(self, case: WeightCase) -> NumberAnswer:
        """Return the kind: grams with one decimal."""
        return NumberAnswer(unit="g", tolerance=0.1, digits=1)

    def answer(self, case: WeightCase, slips: Set[str] = NONE) -> float:
        """Return the weight; divided, the volume in cubic centimetres goes over the density."""
        volume = case.volume_mm3
        if "density-for-weight" in slips:
            volume = 1000.0
        if "ten-millimetres-cubed" in slips:
            volume *= 10.0
        if "divided-by-density" in slips:
            return volume / 1000.0 / case.density
        return weight_of_volume_g(volume, case.density)

    def slips_in(self, case: WeightCase) -> tuple[Slip, ...]:
        """Return the slips that show: dividing by a density near 1 changes a small lens too little."""
        kind, divided = self.kind(case), self.answer(case, {"divided-by-density"})
        return self.slips if kind.apart(divided, self.answer(case)) else self.slips[:-1]

    def prompt(self, case: WeightCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented edged lens has a volume of {case.volume_mm3:,.0f} cubic millimetres. The density "
            f"of its material is {case.density:.2f} g/cm3.",
            "How much does it weigh? Answer in g, to 0.1 g.",
        )

    def given(self, case: WeightCase) -> tuple[Term, ...]:
        """Return volume and density."""
        return (
            in_full("v", case.volume_mm3, "mm3", least_digits=0, meaning="volume of the lens"),
            in_full("rho", case.density, "g/cm3", meaning="density of its material"),
        )

    def solution(self, case: WeightCase) -> Solution:
        """Return what density is, and the step."""
        return Solution(
            words=(
                "Density is the weight of one cubic centimetre. So count the cubic centimetres of the lens "
                "first: 1,000 cubic millimetres make one.",
            ),
            workings=(weight_working(case.volume_mm3, case.density),),
        )

    def hints(self, case: WeightCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What does one cubic centimetre of this material weigh?",
            "A cubic centimetre is 10 mm wide, 10 mm deep and 10 mm high. How many of them does the lens "
            "have?",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LighterCase:
    """Three lenses of the same power for the same frame.

    volumes_mm3: [mm3]; densities: [g/cm3]; of lenses A, B and C.
    """

    volumes_mm3: tuple[float, ...]
    densities: tuple[float, ...]

    @property
    def weights_g(self) -> tuple[float, ...]:
        """What each weighs [g]."""
        return tuple(map(weight_of_volume_g, self.volumes_mm3, self.densities))


class LighterLens(Maker[LighterCase]):
    """Which of three lenses of one power is the lightest."""

    name = "lighter-lens"
    lesson = "04"
    skill = "weight"
    slips = (
        Slip(
            name="density-alone",
            step="what a weight is made of",
            words="You took the lowest density for the lightest lens. That lens is the largest of the three; "
            "weight is density times volume.",
        ),
        Slip(
            name="volume-alone",
            step="what a weight is made of",
            words="You took the thinnest lens for the lightest. Its material is the densest of the three; "
            "weight is density times volume.",
        ),
        Slip(
            name="power-for-weight",
            step="what a weight is made of",
            words="You took all three for alike because the power is. Index makes them thick or thin, and "
            "each material has its own density.",
        ),
    )

    def draw(self, draws: Draws) -> LighterCase:
        """Return three lenses of which the lightest is neither the thinnest nor the least dense."""
        volumes, densities = draws.until("three lenses", _three_lenses, _has_traps)
        places = draws.shuffled((0, 1, 2))
        return LighterCase(
            volumes_mm3=tuple(volumes[at] for at in places), densities=tuple(densities[at] for at in places)
        )

    def kind(self, case: LighterCase) -> ChoiceAnswer:
        """Return the three lenses, and that they are alike."""
        lines = zip(_LETTERS, case.volumes_mm3, case.densities, strict=True)
        return ChoiceAnswer(
            options=(
                *(
                    Option(
                        key=letter, words=f"{letter}: {volume:,.0f} mm3 of a material of {density:.2f} g/cm3"
                    )
                    for letter, volume, density in lines
                ),
                Option(key=_SAME, words="all three alike, because power and frame are the same"),
            )
        )

    def answer(self, case: LighterCase, slips: Set[str] = NONE) -> str:
        """Return the lightest, or the one a slip leads to."""
        if "power-for-weight" in slips:
            return _SAME
        counted = case.weights_g
        if "density-alone" in slips:
            counted = case.densities
        elif "volume-alone" in slips:
            counted = case.volumes_mm3
        return _LETTERS[counted.index(min(counted))]

    def pairs(self, case: LighterCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: LighterCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "The same prescription, worked for the same frame in three invented materials. The higher the "
            "index, the smaller the volume came out.",
            "Which lens is the lightest?",
        )

    def solution(self, case: LighterCase) -> Solution:
        """Return the weight of each."""
        rows = zip(_LETTERS, case.volumes_mm3, case.densities, strict=True)
        return Solution(
            words=(
                "Neither density nor volume alone tells. Multiply them: the lens of the lowest density can "
                "be the largest, and the thinnest can be made of the densest material.",
            ),
            workings=tuple(
                weight_working(volume, density, mark=f"_{letter}", whose=f"lens {letter}")
                for letter, volume, density in rows
            ),
        )

    def hints(self, case: LighterCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What is density the weight of? And how much of the material is in each lens?",
            "Work out all three: density times volume in cubic centimetres.",
        )


def _three_lenses(draws: Draws) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The lightest, the one of least density, and the thinnest."""
    volume = draws.step(3000.0, 6000.0, 100.0)
    densities = draws.one_of((1.2, 1.31, 1.32)), draws.one_of((1.11, 1.2)), draws.one_of((1.36, 1.47, 2.54))
    larger, smaller = draws.step(1.2, 1.5, 0.05), draws.step(0.85, 0.95, 0.05)
    return (volume, _to_tens(volume * larger), _to_tens(volume * smaller)), densities


def _has_traps(lenses: tuple[tuple[float, ...], tuple[float, ...]]) -> bool:
    volumes, densities = lenses
    weights = [weight_of_volume_g(*one) for one in zip(volumes, densities, strict=True)]
    return densities[1] < densities[0] and min(weights[1:]) > _CLEAR * weights[0]


def _to_tens(volume_mm3: float) -> float:
    return 10.0 * round(volume_mm3 / 10.0)
