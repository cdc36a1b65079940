"""Prism: at a point of a lens, by decentration, resolved into two directions and put together again.

Components are base in and base up of one eye, out and down being minus. A base direction is in, out, up
or down, or degrees in the 360 notation of ISO 8429, which runs as the axis does: for the right eye 0 is
in, 90 up, 180 out, 270 down; for the left eye 0 is out and 180 in.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from lablib.errors import LabError, require_between, require_finite
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits
from lablib.optics.power import without_noise
from lablib.optics.prescription import Prescription
from lablib.optics.unclear import BaseMissing

_DIRECTIONS = {"in": (1.0, 0.0), "out": (-1.0, 0.0), "up": (0.0, 1.0), "down": (0.0, -1.0)}
# Below these a meridian counts as plano and a prism as none.
_NO_POWER_D = 1e-6
_NO_PRISM_D = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Prism:
    """An amount of prism and the direction of its base.

    amount_prism_d: amount [prism D], not minus.
    base: "in", "out", "up" or "down", or degrees from 0 to 360.

    Raises BaseMissing for a prism without a base, LabError for another amount or base.
    """

    amount_prism_d: float
    base: str | float | None = None

    def __post_init__(self) -> None:
        amount = require_finite("prism", self.amount_prism_d, unit="prism dioptres")
        if amount < 0:
            raise LabError(f"prism {amount:g} is minus: give a plus amount and turn its base round")
        object.__setattr__(self, "amount_prism_d", amount + 0.0)
        if self.base is None:
            raise BaseMissing(f"{amount:.2f}", as_written=f"{amount:.2f} prism dioptres")
        if isinstance(self.base, str):
            if self.base not in _DIRECTIONS:
                raise LabError(
                    f"base {self.base!r} is not a base direction: give in, out, up or down, or degrees "
                    "from 0 to 360"
                )
        else:
            base = require_between("base direction", self.base, low=0, high=360, unit="degrees")
            object.__setattr__(self, "base", base)

    def resolved(self, *, eye: Eye | str) -> tuple[float, float]:
        """Return the components base in and base up [prism D].

        eye: the eye it is for.

        Raises LabError for no eye.
        """
        nasal = Eye.of(eye).nasal_sign
        if isinstance(self.base, str):
            inwards, upwards = _DIRECTIONS[self.base]
        else:
            inwards, upwards = nasal * _cos_deg(self.base), _cos_deg(self.base - 90)
        return self.amount_prism_d * inwards + 0.0, self.amount_prism_d * upwards + 0.0


def resultant(*, eye: Eye | str, in_prism_d: float, up_prism_d: float) -> Prism:
    """Return the one prism that two components make, its base in degrees.

    eye: the eye it is for.
    in_prism_d, up_prism_d: components base in and base up [prism D].

    Raises LabError for no eye or a component that is not a number.
    """
    along_x = Eye.of(eye).nasal_sign * require_finite("prism base in", in_prism_d, unit="prism dioptres")
    upwards = require_finite("prism base up", up_prism_d, unit="prism dioptres")
    base = without_noise(math.degrees(math.atan2(upwards, along_x + 0.0))) % 360
    return Prism(amount_prism_d=math.hypot(along_x, upwards), base=base)


def together(prisms: Iterable[Prism], *, eye: Eye | str) -> tuple[float, float]:
    """Return the components base in and base up [prism D] of several prisms in one lens.

    prisms: the prisms; none at all make no prism.
    eye: the eye they are for.

    Raises LabError for no eye.
    """
    Eye.of(eye)
    parts = [prism.resolved(eye=eye) for prism in prisms]
    return math.fsum(part[0] for part in parts), math.fsum(part[1] for part in parts)


def in_words(in_prism_d: float, up_prism_d: float) -> str:
    """Return two components as they are spoken: "2.25 base in with 0.43 base down", or "no prism".

    in_prism_d, up_prism_d: components base in and base up [prism D].
    """
    spoken = [
        f"{abs(part):.2f} base {plus if part > 0 else minus}"
        for part, plus, minus in ((in_prism_d, "in", "out"), (up_prism_d, "up", "down"))
        if f"{abs(part):.2f}" != "0.00"
    ]
    return " with ".join(spoken) or "no prism"


def prism_at(
    rx: Prescription, *, eye: Eye | str, in_mm: float | np.ndarray, up_mm: float | np.ndarray
) -> tuple[float | np.ndarray, float | np.ndarray]:
    """Return the prism at a point of a lens, base in and base up [prism D], by Prentice's rule.

    rx: the power for distance.
    eye: the eye it is for.
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm], numbers or arrays of one shape.

    Raises LabError for no eye or a point that is not a number.
    Source: W. F. Long, A matrix formalism for decentration problems, Am. J. Optom. 53 (1976) 27.
    """
    along_in, crossed, along_up = powers_for(rx, eye=eye)
    inwards, upwards = _point("point inwards", in_mm), _point("point upwards", up_mm)
    in_prism = -(along_in * inwards + crossed * upwards) / 10 + 0.0
    up_prism = -(crossed * inwards + along_up * upwards) / 10 + 0.0
    if np.ndim(in_prism):
        return in_prism, up_prism
    return float(in_prism), float(up_prism)


def decentration_for(
    rx: Prescription, *, eye: Eye | str, in_prism_d: float, up_prism_d: float
) -> tuple[float, float]:
    """Return where the optical centre must lie for a prism, inwards and upwards from the point [mm].

    rx: the power for distance.
    eye: the eye it is for.
    in_prism_d, up_prism_d: the prism wanted at the point, base in and base up [prism D].

    Raises LabError for no eye, for a prism that is not a number, and for one that a plano lens or a plano
    meridian cannot give.
    Source: the inverse of `prism_at`.
    """
    wanted = np.array(
        [
            require_finite("prism base in", in_prism_d, unit="prism dioptres"),
            require_finite("prism base up", up_prism_d, unit="prism dioptres"),
        ]
    )
    along_in, crossed, along_up = powers_for(rx, eye=eye)
    powers, meridians = np.linalg.eigh([[along_in, crossed], [crossed, along_up]])
    shares = wanted @ meridians
    plano = np.abs(powers) < _NO_POWER_D
    if np.any(plano & (np.abs(shares) > _NO_PRISM_D)):
        raise LabError(
            f"prism {in_words(in_prism_d, up_prism_d)} cannot come from decentring {rx}: along a meridian "
            "without power a lens gives no prism; have the prism surfaced"
        )
    reach = np.where(plano, 0.0, 10 * shares / np.where(plano, 1.0, powers))
    in_mm, up_mm = meridians @ reach + 0.0
    return float(in_mm), float(up_mm)


def imbalance(
    *, right_prism_d: tuple[float, float], left_prism_d: tuple[float, float]
) -> tuple[float, float]:
    """Return the imbalance of a pair: base in of both eyes together, and base up of the right over the left.

    right_prism_d, left_prism_d: components base in and base up of each eye [prism D].

    Source: common practice; the vertical part checked against Bhootra, Ophthalmic Lenses, p. 47.
    """
    return right_prism_d[0] + left_prism_d[0], right_prism_d[1] - left_prism_d[1]


def thickness_difference_mm(*, amount_prism_d: float, across_mm: float, index_n: float) -> float:
    """Return how much thicker a prism is at its base than at its apex [mm], P d / (100 (n - 1)).

    amount_prism_d: prism [prism D].
    across_mm: distance from apex to base [mm].
    index_n: refractive index.

    Raises LabError for a value out of range.
    Source: common practice; the formula of the published check values.
    """
    amount = require_in_limits("prism", amount_prism_d, "prescribed_prism_d")
    across = require_in_limits("distance across the lens", across_mm, "blank_diameter_mm")
    return amount * across / (100 * (require_in_limits("index", index_n, "index") - 1))


def powers_for(rx: Prescription, *, eye: Eye | str) -> tuple[float, float, float]:
    """Return the power matrix as one eye has it [D]: power along 180, cross term, power along 90.

    rx: the power for distance.
    eye: the eye it is for; the cross term changes sign from eye to eye, since in changes its side.

    Raises LabError for no eye.
    """
    m, j0, j45 = rx.power_vector()
    return m + j0, Eye.of(eye).nasal_sign * j45, m - j0


def _point(thing: str, value: float | np.ndarray) -> np.ndarray:
    place = np.asarray(value)
    # Letters of the kinds whole number and float: "5", True and None are no places.
    if place.dtype.kind not in "iuf" or not np.isfinite(place).all():
        raise LabError(f"{thing} {value!r} is not a finite number: give a number in mm")
    return place


def _cos_deg(angle_deg: float) -> float:
    """Cosine that is 0 at right angles, so that base 90 has no part base in."""
    return 0.0 if angle_deg % 180 == 90 else math.cos(math.radians(angle_deg))
