"""How one lens is set up on the bench: what a person chooses at the block and at the machine."""

from dataclasses import dataclass, field, fields

from lablib.bench.machine import coat_names, skin_names, wheel_names
from lablib.bench.parameter import default, require_parameter, table
from lablib.bench.tip_fit import STIFFNESSES
from lablib.errors import LabError, require_one_of

SENSES = ("against", "with")
_NUMBERS = (
    "pad_age_months",
    "temperature_c",
    "film_wrinkle",
    "key_play_mm",
    "head_force_n",
    "torque_cap_nmm",
)
_NUMBERS_OR_NONE = ("clamp_force_n", "crib_allowance_mm", "block_curve_d", "tip_face_mm", "lens_speed_rpm")


def tip_fits() -> dict[str, str]:
    """Return how a back tip may fit, by name, and what each is in words."""
    known = {name: row["words"] for name, row in table()["fit"].items()}
    return {"usual": "tip and back of nearly one curve", **known}


def grip_layers() -> dict[str, str]:
    """Return what a slick lens may have of its maker's grip layer, by name, and each in words."""
    return {name: row["words"] for name, row in table()["grip_layer"].items()}


def block_faces() -> dict[str, str]:
    """Return the states of a block's face, from the best grip to the worst, and each in words."""
    return {name: row["words"] for name, row in table()["block_face_words"].items()}


def block_face_left(name: str) -> tuple[float, float]:
    """Return what a block's face has left of shear strength and of friction.

    name: of `block_faces`.
    """
    return default(f"block_face.{name}.shear_factor"), default(f"block_face.{name}.friction_factor")


def feeds() -> dict[str, str]:
    """Return how a machine may feed, by name, and each in words."""
    return {name: row["words"] for name, row in table()["feed_words"].items()}


def waters() -> dict[str, str]:
    """Return how a lens may be roughed, by name, and each in words; finishing is always wet."""
    return {name: row["words"] for name, row in table()["water_words"].items()}


def wheel_kinds() -> dict[str, str]:
    """Return what the wheel may be made for, by name, and each in words."""
    return {name: row["words"] for name, row in table()["wheel_kind_words"].items()}


@dataclass(frozen=True, slots=True, kw_only=True)
class Setup:
    """What is chosen for one lens.

    coat: "uncoated", "coated" or "slick".
    film: whether a film goes between pad and coat.
    back_tape: whether the back of the lens is taped under the tip.
    back_tip_idles: whether the back tip turns freely and so carries no torque.
    skin: "clean", "fingerprint" or "oily".
    block: "round" or "half-eye".
    wheel: "sharp", "used", "loaded" or "glazed".
    wheel_sense: which way the wheel's surface runs, "against" the lens edge or "with" it.
    tip_fit, tip_stiffness: how the back tip bears, a name of `tip_fits`, and "soft" or "stiff".
    grip_layer: the maker's temporary layer on a slick coat, a name of `grip_layers`; other coats have none.
    film_wrinkle: share of a film's contact bridged by air under a crease; nothing without a film.
    block_face: state of the block's own face, a name of `block_faces`.
    key_play_mm: room at the block's key [mm].
    block_curve_d: curve of the block, for index 1.530 [D]; None: that of the lens front.
    tip_face_mm: radius of curvature of the tip's face [mm]; None: by `tip_fit`.
    tip_swivels: whether such a tip sets itself square to the back.
    pad_age_months: [months].
    temperature_c: of pad and room [degrees C].
    clamp_force_n: [N]; None leaves it to the bench.
    crib_allowance_mm: what cribbing before this cut leaves round the outline [mm]; None: the uncut round
        blank.
    feed: how the machine feeds, a name of `feeds`; the material's depth of a bite is the deepest in each.
    head_force_n: [N]; for the feed "head force".
    torque_cap_nmm: [N mm]; for the feed "torque cap".
    lens_speed_rpm: [rpm]; None leaves it to the bench.
    water: how it is roughed, a name of `waters`.
    wheel_for: what the wheel is made for, a name of `wheel_kinds`; a wrong one is a caution, not a figure.

    Raises LabError for a word or a number the bench does not know.
    """

    coat: str = "coated"
    film: bool = False
    back_tape: bool = False
    back_tip_idles: bool = False
    skin: str = "clean"
    block: str = "round"
    wheel: str = "sharp"
    wheel_sense: str = "against"
    tip_fit: str = "usual"
    tip_stiffness: str = "soft"
    grip_layer: str = "none"
    film_wrinkle: float = field(default=default("film_wrinkle"))
    block_face: str = "clean"
    key_play_mm: float = field(default=default("key_play_mm"))
    block_curve_d: float | None = None
    tip_face_mm: float | None = None
    tip_swivels: bool = True
    pad_age_months: float = field(default=default("pad_age_months"))
    temperature_c: float = field(default=default("temperature_c"))
    clamp_force_n: float | None = None
    crib_allowance_mm: float | None = None
    feed: str = "depth"
    head_force_n: float = field(default=default("head_force_n"))
    torque_cap_nmm: float = field(default=default("torque_cap_nmm"))
    lens_speed_rpm: float | None = None
    water: str = "manual"
    wheel_for: str = "material"

    def __post_init__(self) -> None:
        for name, choices in _words().items():
            require_one_of(name, getattr(self, name), choices)
        for name in _NUMBERS:
            require_parameter(name, getattr(self, name))
        for name in _NUMBERS_OR_NONE:
            if getattr(self, name) is not None:
                require_parameter(name, getattr(self, name))
        for one in fields(self):
            if one.type is bool and not isinstance(getattr(self, one.name), bool):
                raise LabError(f"{one.name} {getattr(self, one.name)!r} is not yes or no: give true or false")


def _words() -> dict[str, tuple[str, ...]]:
    return {
        "coat": coat_names(),
        "skin": skin_names(),
        "block": tuple(table()["block"]),
        "wheel": wheel_names(),
        "wheel_sense": SENSES,
        "tip_fit": tuple(tip_fits()),
        "tip_stiffness": STIFFNESSES,
        "grip_layer": tuple(grip_layers()),
        "block_face": tuple(block_faces()),
        "feed": tuple(feeds()),
        "water": tuple(waters()),
        "wheel_for": tuple(wheel_kinds()),
    }
