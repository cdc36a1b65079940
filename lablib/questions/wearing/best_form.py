"""A question about best form: which bending of a lens keeps a turned eye's image sharp."""

from collections.abc import Set
from dataclasses import dataclass
from functools import lru_cache

from lablib.optics.best_form import Bending
from lablib.optics.terms import in_full, power_term
from lablib.optics.tscherning import ThinLens
from lablib.optics.tscherning_workings import best_form_workings
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term, plain

_GAZE_DEG = 30.0
_BEST, _FLAT, _EQUAL, _STEEP = "best", "flattest-for-looks", "bent-both-ways", "steeper-than-best"


@dataclass(frozen=True, slots=True, kw_only=True)
class FormCase:
    """A power and the ways to bend it.

    power_d: [D]; index: refractive index; centre_mm: centre thickness [mm].
    fronts_d: front curves by option [D], in the order shown.
    """

    power_d: float
    index: float
    centre_mm: float
    fronts_d: tuple[tuple[str, float], ...]

    @property
    def bending(self) -> Bending:
        """The lens, not yet bent."""
        return Bending(power_d=self.power_d, index=self.index, centre_thickness_mm=self.centre_mm)

    def astigmatism_d(self, key: str) -> float:
        """Return the oblique astigmatism of an option at 30 degrees [D].

        key: of the option.
        """
        return _astigmatism_d(self.bending, dict(self.fronts_d)[key])


class BestForm(Maker[FormCase]):
    """The front curve that leaves least oblique astigmatism."""

    name = "best-form"
    lesson = "09"
    skill = "best-form"
    slips = (
        Slip(
            name=_FLAT,
            step="the front curve for a turned eye",
            words="You took the flat front. It looks thin, but a turned eye meets it slantwise, and the "
            "astigmatism off the axis is large. A front that flat asks for an asphere.",
        ),
        Slip(
            name=_EQUAL,
            step="the front curve for a turned eye",
            words="You shared the power between front and back. Then the back does not follow the eye, and "
            "off the axis the form is worst of all.",
        ),
        Slip(
            name=_STEEP,
            step="the front curve for a turned eye",
            words="You took the steepest front. Bent beyond its best form a lens gets astigmatism of the "
            "other sign, and it bulges out of the frame.",
        ),
    )

    def draw(self, draws: Draws) -> FormCase:
        """Return a power and three or four fronts, the best of them near the form that traced rays find."""
        power = draws.one_of((-6.0, -5.0, -4.0, -3.0, 3.0, 4.0, 5.0))
        index = draws.one_of((1.5, 1.6))
        centre = 2.0 if power < 0.0 else 5.0
        best = _best_front_d(Bending(power_d=power, index=index, centre_thickness_mm=centre))
        # A plus lens with its power on the front alone has a flat back; a minus lens a flat front.
        fronts = (
            (_BEST, best),
            (_FLAT, 0.5 if power < 0.0 else power - 0.5),
            (_EQUAL, power / 2.0),
            (_STEEP, best + draws.one_of((4.0, 5.0))),
        )
        # One of the wrong ones is left out now and then, or the best would always have the same place.
        left_out = draws.one_of((_FLAT, _EQUAL, _STEEP, _STEEP, None))
        # A plus lens bent still more comes near its second form without astigmatism: not asked.
        left_out = left_out if power < 0.0 else _STEEP
        ordered = tuple(sorted((one for one in fronts if one[0] != left_out), key=lambda one: one[1]))
        return FormCase(power_d=power, index=index, centre_mm=centre, fronts_d=ordered)

    def kind(self, case: FormCase) -> ChoiceAnswer:
        """Return the kind: the fronts, flattest first."""
        return ChoiceAnswer(
            options=tuple(
                Option(key=key, words=f"Front curve {front:+.2f} D.") for key, front in case.fronts_d
            )
        )

    def slips_in(self, case: FormCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong front that is shown."""
        return tuple(slip for slip in self.slips if slip.name in dict(case.fronts_d))

    def answer(self, case: FormCase, slips: Set[str] = NONE) -> str:
        """Return the front with least astigmatism by traced rays, or the one of a slip."""
        wrong = next((name for name in (_FLAT, _EQUAL, _STEEP) if name in slips), None)
        return wrong or min(dict(case.fronts_d), key=lambda key: round(abs(case.astigmatism_d(key)), 4))

    def pairs(self, case: FormCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: FormCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of {case.power_d:+.2f} D, index {case.index:g} and {case.centre_mm:g} mm thick at its "
            "centre, can be bent in several ways. Both surfaces are spheres, and the back follows from front "
            "and power.",
            f"Which front leaves least oblique astigmatism for an eye that turns by {_GAZE_DEG:g} degrees?",
        )

    def given(self, case: FormCase) -> tuple[Term, ...]:
        """Return power and index."""
        return (
            power_term("F", case.power_d, "power"),
            in_full("n", case.index, "", least_digits=3, meaning="index"),
        )

    def solution(self, case: FormCase) -> Solution:
        """Return what rays and the third order say."""
        told = "; ".join(
            f"{front:+.2f} D gives {plain(case.astigmatism_d(key), 2)} D" for key, front in case.fronts_d
        )
        return Solution(
            words=(
                "A meniscus whose back curves about the eye is met nearly square in every direction of "
                "gaze. That is why spectacle lenses are bent, and why a minus lens does not have a flat "
                "front.",
                f"By traced rays at {_GAZE_DEG:g} degrees, tangential less sagittal error: {told}.",
                "Worked by hand for a thin lens, Tscherning's formula gives the first place to look. A real "
                "lens and a real angle ask for a front that is somewhat flatter.",
            ),
            workings=best_form_workings(ThinLens(power_d=case.power_d, index=case.index)),
        )

    def hints(self, case: FormCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which way has a lens to be bent so that a turning eye meets its surfaces nearly square?",
            "Too flat is as wrong as too steep: the best form lies between, and for most powers it is a "
            "meniscus.",
        )


@lru_cache(maxsize=256)
def _astigmatism_d(bending: Bending, front_d: float) -> float:
    return float(bending.errors(front_d, _GAZE_DEG).astigmatism_d[0])


@lru_cache(maxsize=64)
def _best_front_d(bending: Bending) -> float:
    """The front with least astigmatism, to the half dioptre, somewhat flatter than that of the thin lens."""
    thin = ThinLens(power_d=bending.power_d, index=bending.index).front_curves_d()[0]
    fronts = [round(2.0 * thin) / 2.0 - 0.5 * step for step in range(-1, 7)]
    return min(fronts, key=lambda front: round(abs(_astigmatism_d(bending, front)), 4))
