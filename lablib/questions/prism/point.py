"""Questions about the prism an eye meets at a point of a lens, sphere or toric."""

from abc import abstractmethod
from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.eye import EYES, Eye
from lablib.optics.power_workings import prism_at_workings
from lablib.optics.prescription import Prescription
from lablib.optics.prism import powers_for, prism_at
from lablib.questions.answers.prism import PrismAnswer
from lablib.questions.prism.pictures import lens_drawing
from lablib.questions.prism.terms import CENTIMETRES, MM_PER_CM, WAYS, along, draw_sphere, given_to
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

# At 10 mm the prism has the size of the power, and a slip in the rule would not show.
_AWAY_MM = (3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 11.0, 12.0)
_UP_MM = (-12.0, -11.0, -9.0, -8.0, -7.0, -6.0, 6.0, 7.0, 8.0)
_IN_MM = (0.0, 0.0, 0.0, -3.0, -2.0, 2.0, 3.0, 4.0)
_FARTHEST_MM = 12.7
# Oblique enough for a cross term that counts, and not 45 or 135, where both meridians have one power.
_AXES_DEG = (15.0, 20.0, 25.0, 30.0, 35.0, 55.0, 60.0, 65.0, 70.0, 75.0)
_OTHER_SIGN = Slip(
    name="base-of-the-other-sign",
    step="the direction of the base",
    words="You gave the opposite base. A plus lens has its base towards its optical centre, a minus lens "
    "away from it.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PointCase:
    """A lens and a point that an eye looks through.

    eye: the eye; rx: the power of its lens.
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm].
    """

    eye: Eye
    rx: Prescription
    in_mm: float
    up_mm: float

    @property
    def words(self) -> str:
        """The point as it is told: "8 mm below and 3 mm in from the optical centre"."""
        upright = f"{abs(self.up_mm):g} mm {'above' if self.up_mm > 0.0 else 'below'}" if self.up_mm else ""
        across = ""
        if self.in_mm:
            across = f"{abs(self.in_mm):g} mm {'in' if self.in_mm > 0.0 else 'out'}"
        if not across:
            return f"{upright} the optical centre"
        return " and ".join(part for part in (upright, across) if part) + " from the optical centre"

    @property
    def workings(self) -> tuple[Working, ...]:
        """The steps to both parts."""
        return prism_at_workings(self.rx, eye=self.eye, in_mm=self.in_mm, up_mm=self.up_mm)


class _AtAPoint(Maker[PointCase]):
    """What both questions share."""

    lesson = "06"

    def kind(self, case: PointCase) -> PrismAnswer:
        """Return the kind: a prism with its base."""
        return PrismAnswer(eye=case.eye, tolerance_prism_d=0.04)

    @abstractmethod
    def lens(self, case: PointCase, slips: Set[str]) -> Prescription:
        """Return the lens that a slip makes of the one on the ticket."""

    def answer(self, case: PointCase, slips: Set[str] = NONE) -> tuple[float, float]:
        """Return base in and base up at the point; a wrong unit or base is the rule at another point."""
        share = MM_PER_CM if CENTIMETRES.name in slips else 1.0
        if _OTHER_SIGN.name in slips:
            share = -share
        return prism_at(
            self.lens(case, slips), eye=case.eye, in_mm=share * case.in_mm, up_mm=share * case.up_mm
        )

    def given(self, case: PointCase) -> tuple[Term, ...]:
        """Return the power; the point stands in the prompt, its signs are part of the question."""
        return tuple(term for term in given_to(case.workings) if term.symbol not in ("in", "up"))

    def drawing(self, case: PointCase) -> Drawing:
        """Return the lens with its point."""
        where = {"in_mm": case.in_mm, "up_mm": case.up_mm, "farthest_mm": _FARTHEST_MM}
        return lens_drawing(case.eye, case.rx, **where)


class PrismAtAPoint(_AtAPoint):
    """The prism of a spherical lens, straight above, below or beside its optical centre."""

    name = "prism-at-a-point"
    skill = "prism-at-a-point"
    slips = (CENTIMETRES, _OTHER_SIGN)

    def draw(self, draws: Draws) -> PointCase:
        """Return a sphere and a point that is not 10 mm off."""
        inwards, upwards = along(draws.one_of(tuple(WAYS)), draws.one_of(_AWAY_MM))
        return PointCase(
            eye=draws.one_of(EYES),
            rx=Prescription(sphere_d=draw_sphere(draws, 1.0, 8.0)),
            in_mm=inwards,
            up_mm=upwards,
        )

    def lens(self, case: PointCase, slips: Set[str]) -> Prescription:
        """Return the lens as it is."""
        return case.rx

    def prompt(self, case: PointCase) -> tuple[str, ...]:
        """Return the lens, the point and what is asked."""
        return (
            f"An invented wearer's {case.eye} eye looks through a lens of {case.rx}, at a point "
            f"{case.words}.",
            "Which prism does it meet there? Give the amount to 0.01 and the base, as in 1.50 base in.",
        )

    def solution(self, case: PointCase) -> Solution:
        """Return which way the base lies, and how much."""
        towards = "towards" if case.rx.sphere_d > 0.0 else "away from"
        return Solution(
            words=(
                "Amount: power times distance, the distance in centimetres. With millimetres, divide by ten.",
                f"Base: this lens is thickest {'in its middle' if case.rx.sphere_d > 0.0 else 'at its rim'}, "
                f"so its base lies {towards} the optical centre. Here that is "
                f"{self.kind(case).written(self.answer(case))}.",
            ),
            workings=case.workings[:1] if case.in_mm else case.workings[1:],
        )

    def hints(self, case: PointCase) -> tuple[str, ...]:
        """Return hints from the lens's shape to the rule."""
        return (
            "Sketch the lens cut in two, with the point the eye looks through.",
            "Where is this lens thick, in its middle or at its rim? The base lies there.",
            "Prism dioptres = power in dioptres times distance in centimetres.",
        )


class PrismAtAPointToric(_AtAPoint):
    """The prism of a lens with an oblique cylinder."""

    name = "prism-at-a-point-toric"
    skill = "prism-at-a-point-of-a-toric-lens"
    slips = (
        Slip(
            name="sphere-alone",
            step="the power along each direction",
            words="You used the sphere alone. The cylinder adds power wherever its axis does not lie.",
        ),
        Slip(
            name="equivalent",
            step="the power along each direction",
            words="You used the spherical equivalent. That is the mean of all directions, and the point lies "
            "in one.",
        ),
        Slip(
            name="wrong-meridian",
            step="the power along each direction",
            words="You exchanged the powers along 180 and along 90. Going up or down, the power along 90 "
            "counts; going in or out, the power along 180.",
        ),
        Slip(
            name="cross-term-lost",
            step="the cross term",
            words="You left out the cross term. Behind an oblique cylinder a move straight up or down gives "
            "prism sideways as well, and a move sideways gives some up or down.",
        ),
        Slip(
            name="eyes-exchanged",
            step="the cross term",
            words="You took the nose to lie on the other side. The axis is seen facing the wearer; in is to "
            "your right on a right eye and to your left on a left eye.",
        ),
        CENTIMETRES,
        _OTHER_SIGN,
    )

    def draw(self, draws: Draws) -> PointCase:
        """Return a lens with an oblique axis and both principal powers of one sign, so that no slip hides."""
        sphere = draw_sphere(draws, 1.0, 6.0)
        cylinder = draws.step(1.0, 3.0, 0.25)
        axis = draws.one_of(_AXES_DEG) + draws.one_of((0.0, 90.0))
        return PointCase(
            eye=draws.one_of(EYES),
            rx=Prescription(
                sphere_d=sphere, cylinder_d=cylinder if sphere > 0.0 else -cylinder, axis_deg=axis
            ),
            in_mm=draws.one_of(_IN_MM),
            up_mm=draws.one_of(_UP_MM),
        )

    def lens(self, case: PointCase, slips: Set[str]) -> Prescription:
        """Return the lens a slip makes: without its cylinder, or with its axis mirrored."""
        rx = case.rx
        if "sphere-alone" in slips:
            return Prescription(sphere_d=rx.sphere_d)
        if "equivalent" in slips:
            return Prescription(sphere_d=rx.spherical_equivalent_d)
        if "wrong-meridian" in slips:
            # Mirrored about 45 the powers along 180 and 90 change places and the cross term stays.
            rx = replace(rx, axis_deg=(90.0 - rx.axis_deg) % 180.0)
        if "eyes-exchanged" in slips:
            rx = replace(rx, axis_deg=180.0 - rx.axis_deg)
        if "cross-term-lost" in slips:
            along_in, _, along_up = powers_for(rx, eye=case.eye)
            rx = Prescription(sphere_d=along_in, cylinder_d=along_up - along_in, axis_deg=180.0)
        return rx

    def prompt(self, case: PointCase) -> tuple[str, ...]:
        """Return the lens, the point and what is asked."""
        return (
            f"An invented wearer's {case.eye} eye looks through a lens of {case.rx}, at a point "
            f"{case.words}.",
            "Which prism does it meet there? Give both parts to 0.01 with their bases, as in 1.50 base up, "
            "0.50 base in.",
        )

    def solution(self, case: PointCase) -> Solution:
        """Return the three powers, and both parts."""
        return Solution(
            words=(
                "Three powers first: along 180, along 90, and the cross term that an oblique axis brings. "
                f"For a {case.eye} eye the cross term is {'minus ' if case.eye is Eye.RIGHT else ''}"
                "C sin A cos A.",
                "Then each part of the prism takes its own power times the distance along it, and the cross "
                "term times the distance across. The minus in front turns the base towards the centre of a "
                "plus lens.",
                f"Written out: {self.kind(case).written(self.answer(case))}.",
            ),
            workings=case.workings,
        )

    def hints(self, case: PointCase) -> tuple[str, ...]:
        """Return hints from the idea to the formulae."""
        return (
            "Make a sketch facing the wearer: the nose, the axis, and the point.",
            "Power along 180: S + C sin² A. Power along 90: S + C cos² A. Cross term: C sin A cos A, with a "
            "minus for the right eye.",
            "Base in: -(power along 180 times in + cross term times up) / 10. Base up: -(cross term times in "
            "+ power along 90 times up) / 10. In mm, out and down minus.",
        )
