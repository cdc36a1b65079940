"""What questions about tilted lenses share: a sphere that is tilted or wrapped, and how it is told."""

from dataclasses import dataclass

from lablib.optics.prescription import Prescription
from lablib.optics.terms import direction_term, in_full, power_term
from lablib.optics.tilt import Tilt
from lablib.study.draws import Draws
from lablib.working import Term

INDICES = (1.5, 1.6, 1.67)


@dataclass(frozen=True, slots=True, kw_only=True)
class TiltedSphere:
    """A sphere in a frame that turns it about one line.

    power_d: [D]; index: refractive index; tilt_deg: the angle [degrees]; is_wrap: else it is pantoscopic
        tilt.
    """

    power_d: float
    index: float
    tilt_deg: float
    is_wrap: bool

    @property
    def rx(self) -> Prescription:
        """The sphere as a prescription."""
        return Prescription(sphere_d=self.power_d)

    @property
    def tilt(self) -> Tilt:
        """How it is turned; for one line alone the eyes do not differ."""
        return self.turned(is_wrap=self.is_wrap)

    def turned(self, *, is_wrap: bool) -> Tilt:
        """Return the same angle about one of the two lines.

        is_wrap: whether it is the vertical one.
        """
        return Tilt(wrap_deg=self.tilt_deg) if is_wrap else Tilt(pantoscopic_deg=self.tilt_deg)

    @property
    def own_form(self) -> str:
        """The form in which the cylinder of the tilt has the sphere's own sign."""
        return "minus" if self.power_d < 0.0 else "plus"

    @property
    def other_form(self) -> str:
        """The form in which the cylinder to order has the line of the tilt for its axis."""
        return "plus" if self.power_d < 0.0 else "minus"

    @property
    def words(self) -> str:
        """The angle in words."""
        return f"{self.tilt_deg:g} degrees of {'wrap' if self.is_wrap else 'pantoscopic tilt'}"

    @property
    def terms(self) -> tuple[Term, Term, Term]:
        """Sphere, angle and index."""
        return (
            power_term("S", self.power_d, "sphere"),
            direction_term("i", self.tilt_deg, "wrap" if self.is_wrap else "pantoscopic tilt"),
            in_full("n", self.index, "", least_digits=3, meaning="index"),
        )


def draw_tilted_sphere(draws: Draws) -> TiltedSphere:
    """Return a lens so strong and so much tilted that each step shows in hundredths of a dioptre.

    draws: to draw from.
    """
    return TiltedSphere(
        power_d=draws.step(5.0, 9.0, 0.25) * draws.one_of((-1.0, -1.0, 1.0)),
        index=draws.one_of(INDICES),
        tilt_deg=draws.step(10.0, 16.0, 1.0),
        is_wrap=draws.whole(2) == 0,
    )
