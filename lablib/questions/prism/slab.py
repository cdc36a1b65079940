"""A question about slab-off: which lens of a pair has it, and with which base, when it is ordered."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.near_imbalance import SlabOff, slab_off
from lablib.optics.power import written_power
from lablib.optics.power_workings import power_in_meridian_working
from lablib.optics.prescription import Prescription
from lablib.optics.terms import marked
from lablib.questions.practice import usual
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Working

_DOWNWARDS_DEG = 90.0
_DROPS_MM = (8.0, 9.0, 10.0, 11.0, 12.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class SlabCase:
    """Two lenses that differ along 90, and how far below their centres the wearer reads.

    right, left: powers for distance.
    drop_mm: below the optical centres [mm].
    """

    right: Prescription
    left: Prescription
    drop_mm: float

    @property
    def found(self) -> SlabOff:
        """The lens that has it, and the amount."""
        return slab_off(self.right, self.left, drop_mm=self.drop_mm)

    @property
    def by_sphere(self) -> SlabOff:
        """What somebody finds who looks at the spheres alone."""
        spheres = (Prescription(sphere_d=rx.sphere_d) for rx in (self.right, self.left))
        return slab_off(*spheres, drop_mm=self.drop_mm)

    @property
    def spheres_mislead(self) -> bool:
        """Whether the spheres alone lead to the other lens."""
        return self.by_sphere.eye not in (None, self.found.eye)

    @property
    def is_large(self) -> bool:
        """Whether the imbalance is one that is slabbed off."""
        return round(self.found.amount_prism_d, 6) >= usual("least_slab_off")


class SlabOffEye(Maker[SlabCase]):
    """Which lens has slab-off, and which base it is."""

    name = "slab-off-eye"
    lesson = "06"
    skill = "slab-off"
    slips = (
        Slip(
            name="lens-with-less-minus",
            step="the lens that has too much base down",
            words="You chose the other lens. The lens with the most minus or least plus along 90 has the "
            "least base up at the reading point, and slab-off gives it base up.",
        ),
        Slip(
            name="sphere-alone",
            step="the power that counts when the eyes look down",
            words="You compared the spheres. The eyes look down, so the power along 90 counts: a cylinder "
            "with its axis at 180 has all of its power there, one at 90 has none.",
        ),
        Slip(
            name="base-down",
            step="the base that slab-off gives",
            words="You gave base down. That lens has too much base down already; base down would double it.",
        ),
        Slip(
            name="reversed-slab-off",
            step="the base that slab-off gives",
            words="You gave base down on the other lens. That would bring the images level as well, and such "
            "lenses are moulded; what is ground on a lens as slab-off is base up.",
        ),
    )

    def draw(self, draws: Draws) -> SlabCase:
        """Return two lenses with a large imbalance; in half of them the spheres alone mislead."""
        misleading = draws.whole(2) == 0
        return draws.until(
            "a pair for slab-off",
            _draw_misleading if misleading else _draw_plain,
            lambda case: case.is_large and case.spheres_mislead == misleading,
        )

    def kind(self, case: SlabCase) -> ChoiceAnswer:
        """Return the kind: a lens and a base."""
        return ChoiceAnswer(
            options=tuple(
                Option(key=_key(eye, base), words=f"base {base} on the {eye} lens")
                for eye in Eye
                for base in ("up", "down")
            )
        )

    def slips_in(self, case: SlabCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        never = "lens-with-less-minus" if case.by_sphere.eye is not case.found.eye else "sphere-alone"
        return tuple(slip for slip in self.slips if slip.name != never)

    def answer(self, case: SlabCase, slips: Set[str] = NONE) -> str:
        """Return the lens and the base."""
        eye = case.found.eye
        if slips & {"lens-with-less-minus", "sphere-alone", "reversed-slab-off"}:
            eye = eye.other
        return _key(eye, "down" if slips & {"base-down", "reversed-slab-off"} else "up")

    def pairs(self, case: SlabCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: SlabCase) -> tuple[str, ...]:
        """Return both lenses, who ordered it, and what is asked."""
        return (
            f"An invented pair of flat tops: right {case.right}, left {case.left}, the same addition in "
            f"both. The wearer reads {case.drop_mm:g} mm below the optical centres for distance. The "
            "prescriber has answered our question and ordered slab-off, ground on one lens.",
            "Which base does it give, and on which lens?",
        )

    def solution(self, case: SlabCase) -> Solution:
        """Return the powers along 90, the lens, and why base up."""
        found = case.found
        return Solution(
            words=(
                "The eyes look down, so the power along 90 of each lens counts. The same addition in both "
                "lenses changes nothing between the eyes.",
                f"The {found.eye} lens has the most minus or least plus there, "
                f"{written_power(_upright_d(case, found.eye))} D against "
                f"{written_power(_upright_d(case, found.eye.other))} D, and so the least base up below "
                f"its centre. Slab-off gives it {found.amount_prism_d:.2f} base up at the reading point.",
            ),
            workings=_workings(case),
        )

    def hints(self, case: SlabCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which power of each lens counts for an eye that looks straight down?",
            "Which of the two lenses has more base down, or less base up, below its centre?",
            "Slab-off makes up for what that lens has too much of. Which base does that?",
        )


def _key(eye: Eye, base: str) -> str:
    return f"{eye}-{base}"


def _upright_d(case: SlabCase, eye: Eye) -> float:
    return (case.right if eye is Eye.RIGHT else case.left).power_in_meridian_d(_DOWNWARDS_DEG)


def _workings(case: SlabCase) -> tuple[Working, ...]:
    steps: tuple[Working, ...] = ()
    for eye, rx in ((Eye.RIGHT, case.right), (Eye.LEFT, case.left)):
        step = power_in_meridian_working(rx, _DOWNWARDS_DEG)
        steps += marked((step,), f"_{eye.name[0]}", whose=f"{eye} eye")
    return steps


def _draw_plain(draws: Draws) -> SlabCase:
    """Two lenses of one sign of which the one with more minus or less plus has it in its sphere."""
    sign = draws.one_of((-1.0, -1.0, 1.0))
    lenses = [_lens(sign * draws.step(0.5, 5.0, 0.25), *_draw_cylinder(draws)) for _ in range(2)]
    return SlabCase(right=lenses[0], left=lenses[1], drop_mm=draws.one_of(_DROPS_MM))


def _draw_misleading(draws: Draws) -> SlabCase:
    """Two lenses of which one has less minus in its sphere, and a strong cylinder along 90."""
    sphere = draws.step(-4.0, 2.0, 0.25)
    with_cylinder = _lens(sphere, draws.step(-4.0, -2.5, 0.25), 180.0)
    other = _lens(sphere - draws.step(0.25, 1.0, 0.25), draws.step(-3.0, 0.0, 0.25), 90.0)
    right, left = draws.shuffled((with_cylinder, other))
    return SlabCase(right=right, left=left, drop_mm=draws.one_of(_DROPS_MM))


def _draw_cylinder(draws: Draws) -> tuple[float, float]:
    """A cylinder and its axis along or across the upright, or none."""
    return draws.one_of((0.0, 1.0, 1.0)) * draws.step(-2.0, -0.5, 0.25), draws.one_of((90.0, 180.0))


def _lens(sphere_d: float, cylinder_d: float, axis_deg: float) -> Prescription:
    return Prescription(sphere_d=sphere_d, cylinder_d=cylinder_d, axis_deg=axis_deg if cylinder_d else None)
