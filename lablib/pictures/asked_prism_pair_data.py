"""What the drawing of a question on prism shows: a pair of lenses, a point looked through, what is asked."""

from dataclasses import dataclass

from lablib.errors import LabError, require_between, require_finite, require_one_of
from lablib.optics.eye import Eye

BASE, TOGETHER, BETWEEN, CENTRE_IN, CENTRE_UP = (
    "base",
    "base of both together",
    "between the eyes",
    "centre inwards",
    "centre upwards",
)
_ASKED = (BASE, TOGETHER, BETWEEN, CENTRE_IN, CENTRE_UP)
_BOTH = "both"
# One lens is drawn larger than the pair, beside the middle of the picture [shown px/mm], [mm].
_PX_PER_MM = {1: 4.8, 2: 3.6}
_BESIDE_MM = 16.0
# No lens is placed or looked through farther out, and no prism is larger.
_LEAST_CENTRE_MM, _MOST_CENTRE_MM, _MOST_AWAY_MM, _MOST_PRISM_D = 24.0, 40.0, 14.0, 40.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PrismCase:
    """Two lenses, the point that is looked through, and what is asked about it.

    asked: "base" where the answer is a prism before one eye, base in and base up; "base of both together"
        where it is shared by both eyes alike, and inwards or outwards; "between the eyes" where it is the
        size of an imbalance; "centre inwards" or "centre upwards" where it is how far from the pupil the
        optical centre must lie [mm].
    eye: "right", "left" or "both", the one asked about.
    reach_prism_d: the arrows are drawn so long that this one has room [prism D].
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm].
    right_centre_mm, left_centre_mm: optical centres, from the middle of the bridge [mm].
    has_centre: whether the optical centre is known, and drawn.
    axis_deg: cylinder axis [degrees]; 0: none.
    order_in_prism_d, order_up_prism_d: a prism that is ordered, and drawn from the first [prism D].
    right_up_prism_d, left_up_prism_d: base up of each eye, drawn once the right answer is shown [prism D].
    in_degrees: whether prisms are written with their base in degrees.

    Raises LabError for a number or a word that cannot be.
    """

    asked: str
    eye: str
    reach_prism_d: float
    in_mm: float = 0.0
    up_mm: float = 0.0
    right_centre_mm: float = 31.0
    left_centre_mm: float = 31.0
    has_centre: bool = True
    axis_deg: float = 0.0
    order_in_prism_d: float = 0.0
    order_up_prism_d: float = 0.0
    right_up_prism_d: float = 0.0
    left_up_prism_d: float = 0.0
    in_degrees: bool = False

    def __post_init__(self) -> None:
        require_one_of("asked", self.asked, _ASKED)
        require_one_of("eye", self.eye, (Eye.RIGHT.value, Eye.LEFT.value, _BOTH))
        if (self.eye == _BOTH) != (self.asked in (TOGETHER, BETWEEN)):
            raise LabError(
                f"{self.asked} is not asked about eye {self.eye!r}: give right or left for one lens, "
                "both for a pair"
            )
        most = {"high": _MOST_PRISM_D, "unit": "prism dioptres"}
        require_between("reach_prism_d", self.reach_prism_d, low=0.0, open_low=True, **most)
        require_between("axis_deg", self.axis_deg, low=0.0, high=180.0, unit="degrees")
        for name in ("in_mm", "up_mm"):
            require_between(name, getattr(self, name), low=-_MOST_AWAY_MM, high=_MOST_AWAY_MM, unit="mm")
        for eye in Eye:
            where = {"low": _LEAST_CENTRE_MM, "high": _MOST_CENTRE_MM, "unit": "mm"}
            require_between(f"{eye}_centre_mm", getattr(self, f"{eye}_centre_mm"), **where)
            require_finite(f"{eye}_up_prism_d", getattr(self, f"{eye}_up_prism_d"), unit="prism dioptres")
        for name in ("order_in_prism_d", "order_up_prism_d"):
            require_finite(name, getattr(self, name), unit="prism dioptres")

    @property
    def eyes(self) -> tuple[Eye, ...]:
        """The eyes asked about."""
        return tuple(Eye) if self.eye == _BOTH else (Eye.of(self.eye),)

    @property
    def is_distance(self) -> bool:
        """Whether the answer is a distance."""
        return self.asked in (CENTRE_IN, CENTRE_UP)

    @property
    def order(self) -> complex:
        """The ordered prism as drawn, x + iy [prism D]."""
        return as_drawn(self.eyes[0], self.order_in_prism_d, self.order_up_prism_d)

    @property
    def px_per_mm(self) -> float:
        """How large it is drawn [shown px/mm]."""
        return _PX_PER_MM[len(self.eyes)]

    @property
    def bridge_mm(self) -> complex:
        """The middle of the bridge as drawn, from the middle of the picture, x + iy [mm]."""
        if self.eye == _BOTH:
            return 0j
        (eye,) = self.eyes
        return as_drawn(eye, self._away_mm(eye) - _BESIDE_MM, 0.0)

    def centre_mm(self, eye: Eye) -> complex:
        """Return where a lens has its middle as drawn, from the middle of the picture, x + iy [mm].

        eye: whose lens.
        """
        return self.bridge_mm - as_drawn(eye, self._away_mm(eye), 0.0)

    def _away_mm(self, eye: Eye) -> float:
        return self.right_centre_mm if eye is Eye.RIGHT else self.left_centre_mm

    def point_mm(self, eye: Eye) -> complex:
        """Return where an eye looks through as drawn, x + iy [mm].

        eye: which.
        """
        return self.centre_mm(eye) + as_drawn(eye, self.in_mm, self.up_mm)

    def upright_prism_d(self, eye: Eye) -> float:
        """Return the base up of an eye that is drawn in the end [prism D].

        eye: which.
        """
        return self.right_up_prism_d if eye is Eye.RIGHT else self.left_up_prism_d


def as_drawn(eye: Eye, inwards: float, upwards: float) -> complex:
    """Return what is given inwards and upwards as the observer sees it, x + iy.

    eye: whose nose in is named from; inwards, upwards: in any unit.
    """
    return complex(eye.nasal_sign * inwards, upwards)
