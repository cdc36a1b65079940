"""What a ticket asks of the bench: how the lens is blocked and how it is cut."""

from dataclasses import dataclass, fields

from lablib.bench.setup import Setup
from lablib.errors import require_between, require_one_of

BLOCKING_POINTS = ("boxed centre", "optical centre", "fitting cross")

# What the bench does when a ticket does not say.
_USUAL = Setup()


@dataclass(frozen=True, slots=True, kw_only=True)
class Blocking:
    """How the lens is to be blocked.

    blocking_point: "boxed centre", "optical centre" or "fitting cross".
    block: "round" or "half-eye".
    film: whether a film goes between pad and coat.
    back_tape: whether the back of the lens is taped under the tip.
    skin: "clean", "fingerprint" or "oily", what lies on the lens.
    grip_layer: "none", "present" or "stripped", the maker's temporary layer on a slick coat.
    film_wrinkle: share of the film bridged by air under a crease.
    block_face: "clean", "worn" or "dirty".
    key_play_mm: room at the block's key [mm].
    block_curve_d: curve of the block, for index 1.530 [D]; None: that of the lens front.
    tip_face_mm: radius of curvature of the back tip's face [mm]; None: nearly that of the back.
    tip_stiffness: "soft" or "stiff".
    tip_swivels: whether a tip whose face is given sets itself square to the back.
    pad_age_months: [months].
    temperature_c: of pad and room [degrees C].
    clamp_force_n: [N]; None leaves it to the bench.

    Raises LabError for a word or a number the bench does not know.
    """

    blocking_point: str = "boxed centre"
    block: str = _USUAL.block
    film: bool = _USUAL.film
    back_tape: bool = _USUAL.back_tape
    skin: str = _USUAL.skin
    grip_layer: str = _USUAL.grip_layer
    film_wrinkle: float = _USUAL.film_wrinkle
    block_face: str = _USUAL.block_face
    key_play_mm: float = _USUAL.key_play_mm
    block_curve_d: float | None = None
    tip_face_mm: float | None = None
    tip_stiffness: str = _USUAL.tip_stiffness
    tip_swivels: bool = _USUAL.tip_swivels
    pad_age_months: float = _USUAL.pad_age_months
    temperature_c: float = _USUAL.temperature_c
    clamp_force_n: float | None = None

    def __post_init__(self) -> None:
        require_one_of("blocking_point", self.blocking_point, BLOCKING_POINTS)
        # What the bench may be asked for is the bench's to say.
        Setup(**self.chosen)

    @property
    def chosen(self) -> dict:
        """What is chosen for the bench, by the names of `lablib.bench.setup.Setup`."""
        return {one.name: getattr(self, one.name) for one in fields(self) if one.name != "blocking_point"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """How the lens is to be cut.

    crib_allowance_mm: what cribbing leaves round the outline [mm]; None: the uncut round blank.
    depth_per_turn_mm: [mm]; None leaves it to the bench.
    wheel: "sharp", "used", "loaded" or "glazed".
    feed: "depth", "head force" or "torque cap".
    head_force_n: [N]; torque_cap_nmm: [N mm]; each for its own feed.
    lens_speed_rpm: [rpm]; None leaves it to the bench.
    water: "manual", "wet" or "dry", how it is roughed.

    Raises LabError for a word or a number no machine cuts with.
    """

    crib_allowance_mm: float | None = None
    depth_per_turn_mm: float | None = None
    wheel: str = _USUAL.wheel
    feed: str = _USUAL.feed
    head_force_n: float = _USUAL.head_force_n
    torque_cap_nmm: float = _USUAL.torque_cap_nmm
    lens_speed_rpm: float | None = None
    water: str = _USUAL.water

    def __post_init__(self) -> None:
        # What the bench may be asked for is the bench's to say.
        Setup(**self.chosen)
        # Glass is cut in other bites than plastics: which bite suits is the material's to say.
        if self.depth_per_turn_mm is not None:
            require_between(
                "depth_per_turn_mm", self.depth_per_turn_mm, low=0.0, high=5.0, unit="mm", open_low=True
            )

    @property
    def chosen(self) -> dict:
        """What is chosen for the bench, by the names of `lablib.bench.setup.Setup`."""
        return {one.name: getattr(self, one.name) for one in fields(self) if one.name != "depth_per_turn_mm"}
