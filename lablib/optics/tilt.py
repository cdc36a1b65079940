"""A lens that does not stand square to the line of sight: what it does, and what to order instead.

Two published forms are kept side by side. Both change the sphere by the same factor and add a cylinder; they
differ in the sphere from which the cylinder is taken. Coordinates are those of an observer facing the wearer.
"""

import math
from dataclasses import dataclass

import numpy as np

from lablib.errors import require_one_of
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits
from lablib.optics.prescription import Prescription

NEW_SPHERE, ORIGINAL_SPHERE = "new sphere", "original sphere"
FORMS = (NEW_SPHERE, ORIGINAL_SPHERE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tilt:
    """How a lens is turned in front of an eye that looks straight ahead.

    pantoscopic_deg: about the horizontal [degrees], positive where the lower rim comes nearer to the cheek.
    wrap_deg: about the vertical [degrees], positive where the temporal rim comes nearer to the temple.
    eye: which eye; it says on which side the temporal rim lies.

    The lens is wrapped in its frame first, and the whole frame is then tilted.
    Raises LabError for an angle out of range, or no eye.
    """

    pantoscopic_deg: float = 0.0
    wrap_deg: float = 0.0
    eye: Eye = Eye.RIGHT

    def __post_init__(self) -> None:
        require_in_limits("pantoscopic tilt", self.pantoscopic_deg, "pantoscopic_tilt_deg")
        require_in_limits("wrap", self.wrap_deg, "wrap_deg")
        object.__setattr__(self, "eye", Eye.of(self.eye))

    @property
    def obliquity_deg(self) -> float:
        """The angle between the lens's own axis and the line straight ahead [degrees]."""
        wrap, pantoscopic = math.radians(self.wrap_deg), math.radians(self.pantoscopic_deg)
        # By the sines of both, because the cosine says little about a small angle.
        return math.degrees(math.asin(math.hypot(math.sin(wrap), math.sin(pantoscopic) * math.cos(wrap))))

    @property
    def axes(self) -> np.ndarray:
        """The lens's own right, up and axis towards the eye, one in each column; shape (3, 3)."""
        wrap = self.eye.nasal_sign * math.radians(self.wrap_deg)
        pantoscopic = math.radians(self.pantoscopic_deg)
        about_vertical = np.array(
            [[math.cos(wrap), 0.0, math.sin(wrap)], [0.0, 1.0, 0.0], [-math.sin(wrap), 0.0, math.cos(wrap)]]
        )
        about_horizontal = np.array(
            [
                [1.0, 0.0, 0.0],
                [0.0, math.cos(pantoscopic), math.sin(pantoscopic)],
                [0.0, -math.sin(pantoscopic), math.cos(pantoscopic)],
            ]
        )
        return about_horizontal @ about_vertical


def sphere_factor(obliquity_deg: float, index: float) -> float:
    """Return by how much the power grows in every meridian when a lens is tilted, 1 + sin^2 / 2n.

    obliquity_deg: angle between the lens's axis and the line of sight [degrees].
    index: refractive index.

    Raises LabError for an index out of range.
    Source: the published check value, +15.00 D tilted by 10 degrees; M. Jalie, The Principles of Ophthalmic
        Lenses (memory).
    """
    n = require_in_limits("index", index, "index")
    return 1.0 + math.sin(math.radians(obliquity_deg)) ** 2 / (2.0 * n)


def tilt_effect(rx: Prescription, *, tilt: Tilt, index: float, form: str = NEW_SPHERE) -> Prescription:
    """Return what a tilted lens does for the eye behind it, in minus-cylinder form.

    rx: the lens as it reads when it is held square; its addition is kept.
    tilt: how it is worn.
    index: refractive index.
    form: "new sphere" takes the cylinder from the changed sphere, "original sphere" from that of the lens.

    A sphere S becomes S' = S (1 + sin^2 / 2n) with a cylinder S' tan^2, or S tan^2, whose axis is the line
    about which it is tilted: 180 for pantoscopic tilt, 90 for wrap. A toric lens is tilted as a power matrix.

    Raises LabError for another form, an index out of range, or a power that no lens has.
    Source: for spheres both forms as published; for toric and doubly tilted lenses derived (see `_parts`)
        and checked against traced rays.
    """
    own, longer, (a, b, g) = _parts(tilt, index, form)
    along_180, crossed, along_90 = _powers(rx)
    return _prescription(
        own * along_180 + longer * (a * a * along_180 + 2.0 * a * g * crossed + g * g * along_90),
        own * crossed + longer * b * (a * crossed + g * along_90),
        own * along_90 + longer * b * b * along_90,
        rx.addition_d,
    )


def compensated(rx: Prescription, *, tilt: Tilt, index: float, form: str = NEW_SPHERE) -> Prescription:
    """Return the lens that has to be ordered so that, tilted, it does what was prescribed, in minus form.

    rx: what the eye is to have; its addition is kept.
    tilt, index, form: as in `tilt_effect`, which also says what it raises.

    It is solved exactly: `tilt_effect` of the lens returned is the prescription.
    """
    own, longer, (a, b, g) = _parts(tilt, index, form)
    along_180, crossed, along_90 = _powers(rx)
    # Each power of the effect holds one of the lens that those below it do not: they are undone in turn.
    along_90 /= own + longer * b * b
    crossed = (crossed - longer * b * g * along_90) / (own + longer * a * b)
    along_180 -= longer * (2.0 * a * g * crossed + g * g * along_90)
    return _prescription(along_180 / (own + longer * a * a), crossed, along_90, rx.addition_d)


def _parts(tilt: Tilt, index: float, form: str) -> tuple[float, float, tuple[float, float, float]]:
    """How much of the lens's own power matrix F, and of J^T F J, makes its effect, and a, b and g of J.

    A step square to the line of sight is a longer step on the tilted lens, and the deviation is turned back
    the same way. J = [[a, 0], [g, b]] leads from steps across the line of sight to steps on the lens.
    """
    require_one_of("form", form, FORMS)
    factor = sphere_factor(tilt.obliquity_deg, index)
    wrap, pantoscopic = tilt.eye.nasal_sign * math.radians(tilt.wrap_deg), math.radians(tilt.pantoscopic_deg)
    on_lens = 1.0 / math.cos(wrap), 1.0 / math.cos(pantoscopic), math.tan(wrap) * math.tan(pantoscopic)
    return (0.0, factor, on_lens) if form == NEW_SPHERE else (factor - 1.0, 1.0, on_lens)


def _powers(rx: Prescription) -> tuple[float, float, float]:
    """Power along 180, cross term, and power along 90 [D]."""
    mean, j0, j45 = rx.power_vector()
    return mean + j0, j45, mean - j0


def _prescription(along_180: float, crossed: float, along_90: float, addition_d: float) -> Prescription:
    mean, j0 = (along_180 + along_90) / 2.0, (along_180 - along_90) / 2.0
    return Prescription.from_power_vector(mean, j0, crossed, addition_d=addition_d)
