"""Two bifocals of different power, and the imbalance where the wearer reads."""

from dataclasses import dataclass

from lablib.optics.near_imbalance import SlabOff, slab_off
from lablib.optics.prescription import Prescription
from lablib.optics.prism_pair_workings import near_imbalance_workings
from lablib.optics.segment_layout import reading_drop_mm
from lablib.optics.segment_workings import reading_drop_working
from lablib.questions.multifocals.case import millimetres
from lablib.study.draws import Draws
from lablib.working import Term, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class BifocalPair:
    """Two bifocals of different power with equal segments at one height.

    right_d, left_d: spheres for distance, both of one sign [D].
    addition_d: alike in both [D].
    top_mm: top of the segments below the distance centres [mm].
    reading_mm: where the wearer reads, below the top [mm].
    """

    right_d: float
    left_d: float
    addition_d: float
    top_mm: float
    reading_mm: float

    @property
    def drop_mm(self) -> float:
        """Where the wearer reads, below the distance centres [mm]."""
        return reading_drop_mm(top_below_centre_mm=self.top_mm, below_top_mm=self.reading_mm)

    def imbalance(self, drop_mm: float) -> SlabOff:
        """Return the imbalance at a level.

        drop_mm: below the distance centres [mm].
        """
        return slab_off(*self.lenses, drop_mm=drop_mm)

    @property
    def lenses(self) -> tuple[Prescription, Prescription]:
        """Right and left."""
        return tuple(
            Prescription(sphere_d=power, addition_d=self.addition_d) for power in (self.right_d, self.left_d)
        )

    @property
    def workings(self) -> tuple[Working, ...]:
        """The level, each lens there, and the difference."""
        level = reading_drop_working(top_below_centre_mm=self.top_mm, below_top_mm=self.reading_mm)
        minus = Working(
            what="the reading place upwards of the distance centres",
            symbol="up",
            formula="-d",
            terms=(level.as_term(),),
            value=-level.value,
            unit="mm",
            digits=level.digits,
        )
        steps = near_imbalance_workings(*self.lenses, drop_mm=self.drop_mm)
        wanted = [step for step in steps if not step.symbol.startswith("P_in")]
        return level, *_for_both(minus), *wanted

    @property
    def given(self) -> tuple[Term, ...]:
        """Both levels, and both spheres."""
        return (
            Term(symbol="S_R", value=self.right_d, unit="D", digits=2, meaning="sphere, right eye"),
            Term(symbol="S_L", value=self.left_d, unit="D", digits=2, meaning="sphere, left eye"),
            Term(symbol="Add", value=self.addition_d, unit="D", digits=2, meaning="addition, both eyes"),
            millimetres("t", self.top_mm, "tops of the segments below the distance centres"),
            millimetres("r", self.reading_mm, "the place read through, below the tops"),
        )


def _for_both(step: Working) -> tuple[Working, ...]:
    """The level as the chains of both eyes name it."""
    return tuple(
        Working(
            what=step.what,
            symbol=f"up_{mark}",
            formula=step.formula,
            terms=step.terms,
            value=step.value,
            unit=step.unit,
            digits=step.digits,
        )
        for mark in "RL"
    )


def draw_pair(draws: Draws) -> BifocalPair:
    """Return two lenses of one sign that differ by 0.75 D or more.

    draws: to draw from.
    """
    weaker = draws.step(0.5, 3.0, 0.25)
    stronger = weaker + draws.step(0.75, 4.0, 0.25)
    sign = draws.one_of((-1.0, -1.0, 1.0))
    right, left = draws.shuffled((sign * weaker, sign * stronger))
    return BifocalPair(
        right_d=right,
        left_d=left,
        addition_d=draws.step(1.0, 2.75, 0.25),
        top_mm=draws.step(2.0, 5.0, 1.0),
        reading_mm=draws.step(4.0, 8.0, 1.0),
    )
