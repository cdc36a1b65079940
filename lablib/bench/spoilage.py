"""What one spoiled lens costs: another lens, the same work again, and what comes with both.

Money is counted in whatever the lens was bought in.
"""

from dataclasses import dataclass, fields

from lablib.errors import LabError, require_finite

MINUTES_PER_HOUR = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SpoiledLens:
    """What has to be paid again when one lens is spoiled.

    lens_price: of the new lens [money].
    labour_min: the work that is done again [min].
    hourly_rate: of that work [money per hour].
    delivery: of the new lens [money].
    coat: of the new lens, where it is charged apart [money].

    Raises LabError for what is no number, or is below 0.
    """

    lens_price: float
    labour_min: float
    hourly_rate: float
    delivery: float = 0.0
    coat: float = 0.0

    def __post_init__(self) -> None:
        for one in fields(self):
            value = require_finite(one.name, getattr(self, one.name))
            if value < 0.0:
                raise LabError(f"{one.name} {value:g} is below 0: give what is paid again, 0 for nothing")

    @property
    def labour(self) -> float:
        """Cost of the work done again [money]."""
        return self.hourly_rate * self.labour_min / MINUTES_PER_HOUR

    @property
    def cost(self) -> float:
        """Everything paid again [money]."""
        return self.lens_price + self.labour + self.delivery + self.coat
