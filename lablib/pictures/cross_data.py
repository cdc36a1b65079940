"""What the picture of an optical cross shows."""

from dataclasses import dataclass

import numpy as np

from lablib.optics.optical_cross import OpticalCross
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrossThere:
    """One lens in both its forms, its powers all round, and one meridian to read.

    minus, plus: the lens in its two forms; of a sphere the two are alike.
    cross: its cross; first the axis of the minus form.
    meridian_deg: the meridian to read, above 0 and up to 180 [degrees]; power_d: the power along it [D].
    meridians_deg, powers_d: powers all round, from 0 to 180 [degrees], [D], shape (N,).
    is_hidden: whether all is kept back but the power on the meridian, for somebody who looks for the rest.
    """

    minus: Prescription
    plus: Prescription
    cross: OpticalCross
    meridian_deg: float
    power_d: float
    meridians_deg: np.ndarray
    powers_d: np.ndarray
    is_hidden: bool = False

    @property
    def is_toric(self) -> bool:
        """Whether the lens has a cylinder."""
        return self.minus.axis_deg is not None

    @property
    def shows_cross(self) -> bool:
        """Whether there is a cross, and it is not kept back."""
        return self.is_toric and not self.is_hidden

    @property
    def read_off(self) -> str:
        """The power on the meridian, as it is spoken: "+1.82 on 180"."""
        return on(self.power_d, self.meridian_deg)


def on(power_d: float, meridian_deg: float) -> str:
    """Return a power and its meridian as they are spoken: "+2.00 on 020".

    power_d: [D]; meridian_deg: above 0 and up to 180 [degrees].
    """
    return f"{written_power(power_d)} on {round(meridian_deg) or 180:03d}"
