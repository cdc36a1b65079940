"""What the picture of two eyes that read shows."""

from dataclasses import dataclass

from lablib.optics.eye import Eye


@dataclass(frozen=True, slots=True, kw_only=True)
class NearSight:
    """Where two eyes look through their lenses, far and near.

    right_pd_mm, left_pd_mm: far, from the middle of the bridge [mm].
    right_near_mm, left_near_mm: near, at the lens, from the middle of the bridge [mm].
    working_distance_mm: from the lens to what is read [mm].
    centre_of_rotation_mm: from the lens back to the eyes' centres of rotation [mm].
    """

    right_pd_mm: float
    left_pd_mm: float
    right_near_mm: float
    left_near_mm: float
    working_distance_mm: float
    centre_of_rotation_mm: float

    def far_mm(self, eye: Eye) -> float:
        """Return the far distance of an eye [mm].

        eye: whose.
        """
        return self.right_pd_mm if eye is Eye.RIGHT else self.left_pd_mm

    def near_mm(self, eye: Eye) -> float:
        """Return the near distance of an eye [mm].

        eye: whose.
        """
        return self.right_near_mm if eye is Eye.RIGHT else self.left_near_mm

    def inset_mm(self, eye: Eye) -> float:
        """Return how much nearer to the nose an eye looks through its lens when it reads [mm].

        eye: whose.
        """
        return self.far_mm(eye) - self.near_mm(eye)
