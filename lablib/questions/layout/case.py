"""A frame and a wearer as layout questions tell them, and the way to the decentration."""

from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame
from lablib.optics.layout import decentration_mm
from lablib.optics.layout_workings import decentration_workings
from lablib.working import Term, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutCase:
    """A frame, and where the wearer's eyes stand.

    frame: the frame; eye: the one asked about.
    right_pd_mm, left_pd_mm: monocular distances [mm].
    is_binocular: whether only the distance between both eyes is told, which then stand alike.
    """

    frame: Frame
    eye: Eye
    right_pd_mm: float
    left_pd_mm: float
    is_binocular: bool

    @property
    def both_mm(self) -> float:
        """Distance between the pupils [mm]."""
        return self.right_pd_mm + self.left_pd_mm

    @property
    def pd_mm(self) -> float:
        """Monocular distance of the eye asked about [mm]."""
        return self.right_pd_mm if self.eye is Eye.RIGHT else self.left_pd_mm

    @property
    def in_mm(self) -> float:
        """Decentration in [mm]."""
        return decentration_mm(self.frame, monocular_pd_mm=self.pd_mm)[0]

    @property
    def distances(self) -> tuple[Term, ...]:
        """The wearer's distances as they are told."""
        if self.is_binocular:
            return (_distance("PD_both", self.both_mm, "distance between the pupils"),)
        return (
            _distance("PD_R", self.right_pd_mm, "monocular distance, right eye"),
            _distance("PD_L", self.left_pd_mm, "monocular distance, left eye"),
        )

    @property
    def workings(self) -> tuple[Working, ...]:
        """The eye's own distance, then the decentration."""
        if self.is_binocular:
            told, formula = self.distances[0], "PD_both / 2"
        else:
            told = self.distances[EYES.index(self.eye)]
            formula = told.symbol
        own = Working(
            what=f"monocular distance of the {self.eye} eye",
            symbol="PD",
            formula=formula,
            terms=(told,),
            value=self.pd_mm,
            unit="mm",
        )
        return own, *decentration_workings(self.frame, monocular_pd_mm=self.pd_mm, height_mm=None)


def _distance(symbol: str, value: float, meaning: str) -> Term:
    return Term(symbol=symbol, value=value, unit="mm", digits=1, meaning=meaning)
