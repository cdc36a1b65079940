"""A prescription as a value: its two forms, its power in every meridian, sums, and other distances.

Axes run anticlockwise from the horizontal as an observer facing the wearer sees them, the same for
both eyes, and 180 is written, never 0 (ISO 8429). In the matrices x points to the observer's right
and y up.
"""

import math
from dataclasses import dataclass, replace

import numpy as np

from lablib.errors import LabError, require_between, require_finite
from lablib.optics import power
from lablib.optics.unclear import AxisMissing


@dataclass(frozen=True, slots=True, kw_only=True)
class Prescription:
    """Sphere, cylinder, axis and addition of one lens.

    sphere_d: sphere [D]; it and the sum of sphere and cylinder lie from -40 to +40.
    cylinder_d: cylinder [D], plus or minus, from -20 to +20.
    axis_deg: axis [degrees], above 0 and up to 180; dropped where there is no cylinder, because
        spheres are alike whatever axis stands beside them.
    addition_d: addition for near [D], from 0 to 12.

    Raises AxisMissing for a cylinder without an axis and LabError for a value out of range.
    """

    sphere_d: float
    cylinder_d: float = 0.0
    axis_deg: float | None = None
    addition_d: float = 0.0

    def __post_init__(self) -> None:
        sphere = power.require_power("sphere", self.sphere_d, power.POWER_LIMIT_D)
        cylinder = power.require_power("cylinder", self.cylinder_d, power.CYLINDER_LIMIT_D)
        across = power.without_noise(sphere + cylinder)
        power.require_power("sphere and cylinder together", across, power.POWER_LIMIT_D)
        axis = None if self.axis_deg is None else power.require_axis(self.axis_deg)
        if cylinder and axis is None:
            raise AxisMissing(
                power.written_power(cylinder),
                as_written=f"{power.written_power(sphere)} {power.written_power(cylinder)}",
            )
        addition = require_between("addition", self.addition_d, low=0, high=power.ADDITION_LIMIT_D, unit="D")
        object.__setattr__(self, "sphere_d", sphere)
        object.__setattr__(self, "cylinder_d", cylinder)
        object.__setattr__(self, "axis_deg", axis if cylinder else None)
        object.__setattr__(self, "addition_d", addition + 0.0)

    @classmethod
    def parse(cls, text: str) -> "Prescription":
        """Return the prescription that a line of text holds; `reading.read` gives the notes as well.

        text: for example "+2.00 -1.50 x 090" or "-2,25/-0,50x5° add 2,00".

        Raises UnclearPrescription with the question to ask, or LabError.
        """
        # Imported late, because the reader makes prescriptions and so has to import this module.
        from lablib.optics.reading import read

        return read(text).prescription

    @classmethod
    def from_power_vector(
        cls, m_d: float, j0_d: float, j45_d: float, *, addition_d: float = 0.0
    ) -> "Prescription":
        """Return the prescription of a power vector, in minus-cylinder form.

        m_d: spherical equivalent [D].
        j0_d, j45_d: crossed cylinders at 0 and 45 degrees [D].
        addition_d: addition [D].

        Raises LabError for a value out of range.
        Source: L. N. Thibos, W. Wheeler, D. Horner, Power vectors, Optom. Vis. Sci. 74 (1997) 367.
        """
        for name, value in (("M", m_d), ("J0", j0_d), ("J45", j45_d)):
            require_finite(f"power vector part {name}", value, unit="D")
        half = math.hypot(j0_d, j45_d)
        cylinder = power.without_noise(-2 * half)
        axis = power.wrapped_axis_deg(math.degrees(math.atan2(j45_d, j0_d)) / 2) if cylinder else None
        sphere = power.without_noise(m_d + half if cylinder else m_d)
        return cls(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis, addition_d=addition_d)

    @classmethod
    def from_power_matrix(cls, matrix: np.ndarray, *, addition_d: float = 0.0) -> "Prescription":
        """Return the prescription of a dioptric power matrix, in minus-cylinder form.

        matrix: symmetric power matrix [D], shape (2, 2).
        addition_d: addition [D].

        Raises LabError for a matrix of another shape, not finite or not symmetric.
        Source: W. F. Long, A matrix formalism for decentration problems, Am. J. Optom. 53 (1976) 27.
        """
        try:
            rows = np.asarray(matrix, dtype=float)
        except (TypeError, ValueError):
            rows = np.empty(0)
        if rows.shape != (2, 2) or not np.isfinite(rows).all():
            raise LabError(
                f"power matrix {matrix!r} is not two rows of two finite numbers: give [[a, b], [b, c]]"
            )
        if abs(rows[0, 1] - rows[1, 0]) > 1e-6:
            raise LabError(
                f"power matrix {rows.tolist()} is not symmetric: a thin lens has equal numbers off the "
                "diagonal; give [[a, b], [b, c]]"
            )
        (xx, xy), (_, yy) = rows.tolist()
        return cls.from_power_vector((xx + yy) / 2, (xx - yy) / 2, xy, addition_d=addition_d)

    @property
    def spherical_equivalent_d(self) -> float:
        """Sphere plus half the cylinder [D]."""
        return self.sphere_d + self.cylinder_d / 2

    def transposed(self) -> "Prescription":
        """Return the same lens written with a cylinder of the other sign; a sphere stays as it is.

        Source: common practice; checked against published transpositions.
        """
        if not self.cylinder_d:
            return self
        return replace(
            self,
            sphere_d=power.without_noise(self.sphere_d + self.cylinder_d),
            cylinder_d=-self.cylinder_d,
            axis_deg=self.axis_deg - 90 if self.axis_deg > 90 else self.axis_deg + 90,
        )

    def in_form(self, form: str) -> "Prescription":
        """Return the same lens in "minus" or "plus" cylinder form.

        form: "minus" or "plus".

        Raises LabError for another word.
        """
        if form not in ("minus", "plus"):
            raise LabError(f'form {form!r} is not a cylinder form: give "minus" or "plus"')
        return self.transposed() if self.cylinder_d * (1 if form == "minus" else -1) > 0 else self

    def power_in_meridian_d(self, meridian_deg: float | np.ndarray) -> float | np.ndarray:
        """Return the power along a meridian [D], S + C sin2(meridian - axis).

        meridian_deg: meridian [degrees], a number or an array of any shape.

        Source: common practice; the formula of the published check values.
        """
        turn = np.radians(np.subtract(meridian_deg, self.axis_deg or 0.0))
        along = self.sphere_d + self.cylinder_d * np.sin(turn) ** 2
        return along if np.ndim(meridian_deg) else float(along)

    def power_vector(self) -> tuple[float, float, float]:
        """Return M, J0 and J45 [D]: spherical equivalent and the two crossed cylinders.

        Source: L. N. Thibos, W. Wheeler, D. Horner, Power vectors, Optom. Vis. Sci. 74 (1997) 367.
        """
        twice = math.radians(2 * (self.axis_deg or 0.0))
        half = self.cylinder_d / 2
        return self.sphere_d + half, -half * math.cos(twice), -half * math.sin(twice)

    def power_matrix(self) -> np.ndarray:
        """Return the dioptric power matrix [D], shape (2, 2), x to the observer's right and y up.

        Source: W. F. Long, A matrix formalism for decentration problems, Am. J. Optom. 53 (1976) 27.
        """
        m, j0, j45 = self.power_vector()
        return np.array([[m + j0, j45], [j45, m - j0]])

    def written(self, form: str | None = None) -> str:
        """Return the prescription as it is written on a ticket: "+2.00 -1.50 x 090 add +2.25".

        form: "minus" or "plus" cylinder; None leaves it as it is. Two decimals, the axis in three
            figures without a degree sign; a sphere says DS, so that nobody looks for a lost cylinder.

        Raises LabError for another form.
        """
        lens = self if form is None else self.in_form(form)
        sphere, cylinder = power.written_power(lens.sphere_d), power.written_power(lens.cylinder_d)
        sphere = "plano" if sphere == "0.00" else sphere
        if cylinder != "0.00":
            distance = f"{sphere} {cylinder} x {round(lens.axis_deg) or 180:03d}"
        else:
            distance = sphere if sphere == "plano" else f"{sphere} DS"
        addition = power.written_power(lens.addition_d)
        return distance if addition == "0.00" else f"{distance} add {addition}"

    def __str__(self) -> str:
        return self.written()


def combine(first: Prescription, second: Prescription) -> Prescription:
    """Return the one lens that does what two thin lenses in contact do, in minus-cylinder form.

    first, second: the two lenses; additions are added as well.

    Raises LabError when the sum is out of range.
    Source: power vectors add, Thibos 1997 (see `Prescription.power_vector`).
    """
    m, j0, j45 = np.add(first.power_vector(), second.power_vector())
    return Prescription.from_power_vector(m, j0, j45, addition_d=first.addition_d + second.addition_d)


def residual_when_turned(rx: Prescription, by_deg: float) -> Prescription:
    """Return what a turned lens leaves over: the turned lens less the ordered one, in minus-cylinder form.

    rx: the lens as ordered.
    by_deg: how far it turned [degrees], positive anticlockwise as the observer facing the wearer sees it.

    Raises LabError for a turn that is not a number, and for what no range holds: twice a cylinder above 10 D.
    Source: crossed cylinder of 2 C sin(turn), IACLE Contact Lens Course Module 3, Appendix B, p. 127.
    """
    turn = require_finite("turn", by_deg, unit="degrees")
    if not rx.cylinder_d:
        return Prescription(sphere_d=0.0)
    turned = replace(rx, axis_deg=power.wrapped_axis_deg(rx.axis_deg + turn))
    _, j0, j45 = np.subtract(turned.power_vector(), rx.power_vector())
    return Prescription.from_power_vector(0.0, j0, j45)


def at_vertex_distance(rx: Prescription, *, from_mm: float, to_mm: float) -> Prescription:
    """Return the lens that has the same effect at another vertex distance, both meridians exactly.

    rx: the lens as tested; its addition is kept as it is.
    from_mm, to_mm: vertex distance of the tested and of the worn lens [mm], 0 for the cornea.

    Raises LabError for a distance out of range or a power that no lens at that distance can have.
    Source: F / (1 - d F) as in C. W. Brooks, Understanding Lens Surfacing.
    """
    closer_m = (_vertex("tested vertex distance", from_mm) - _vertex("vertex distance", to_mm)) / 1000
    sphere = _effective_d(rx.sphere_d, closer_m)
    crossed = _effective_d(rx.sphere_d + rx.cylinder_d, closer_m)
    return replace(rx, sphere_d=sphere, cylinder_d=power.without_noise(crossed - sphere))


def _effective_d(power_d: float, closer_m: float) -> float:
    reach = 1 - closer_m * power_d
    if reach <= 0:
        raise LabError(
            f"power {power_d:+.2f} D cannot be moved {closer_m * 1000:g} mm towards the eye: its focus lies "
            "nearer than that; check the power and both distances"
        )
    return power_d / reach


def _vertex(thing: str, value: float) -> float:
    return require_between(thing, value, low=0, high=power.VERTEX_LIMIT_MM, unit="mm")
