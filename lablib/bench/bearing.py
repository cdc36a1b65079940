"""How a face of the grip bears on another: all over, or with a part of it lifted off."""

from dataclasses import dataclass

from lablib.errors import require_between

_MOST_RADIUS_SHARE = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing:
    """What is left of an even contact.

    area: share of the area that touches; adhesive holds a sideways load there alone.
    turning: share of W, the integral of the distance from the axis, that touches; adhesive torque.
    friction_radius: radius at which friction acts, over an even contact's effective radius. Friction does
        not ask how large the contact is, only how far out the pressure lies.

    Raises LabError for a share outside 0 to 1, or a friction radius outside 0 to 2.
    """

    area: float = 1.0
    turning: float = 1.0
    friction_radius: float = 1.0

    def __post_init__(self) -> None:
        require_between("share of the area that touches", self.area, low=0.0, high=1.0)
        require_between("share of W that touches", self.turning, low=0.0, high=1.0)
        require_between(
            "share of the friction radius", self.friction_radius, low=0.0, high=_MOST_RADIUS_SHARE
        )

    @property
    def is_even(self) -> bool:
        """Whether nothing is lifted off and the pressure lies as on an even contact."""
        return self == EVEN

    def without(self, share: float) -> "Bearing":
        """Return the bearing when a share of the contact is bridged by air, spread all over it.

        share: lost, from 0 to below 1.
        """
        return Bearing(
            area=self.area * (1.0 - share),
            turning=self.turning * (1.0 - share),
            friction_radius=self.friction_radius,
        )


EVEN = Bearing()
