"""Two rims above a ruler, as questions that are read off it tell them."""

from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.questions.layout.frames import outline_rows
from lablib.study.draws import Draws
from lablib.study.question import Drawing
from lablib.working import Term

_SHAPES = (OutlineShape(), OutlineShape.named("panto"), OutlineShape.named("pilot"))
# What a slip at the ruler fails in.
ZERO_STEP = "what is taken from what at the ruler"


def ruled_frame(draws: Draws) -> tuple[Frame, float]:
    """Return a frame whose widest line seldom is its midline, and what the ruler shows where it begins [mm].

    draws: to draw its numbers from.
    """
    width = draws.step(44.0, 57.0, 1.0)
    frame = Frame(
        a_mm=width,
        b_mm=width - draws.one_of((10.0, 12.0, 14.0)),
        dbl_mm=draws.step(14.0, 22.0, 1.0),
        shape=draws.one_of(_SHAPES),
    )
    return frame, draws.step(3.0, 8.0, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class RuledCase:
    """Two rims above a ruler.

    frame: the frame; eye: the one asked about; asked: what is asked, or what the wearer looks at.
    start_mm: what the ruler shows at the temporal side of the right lens [mm].
    right_pd_mm, left_pd_mm: monocular distances, 0 where no pupils are shown [mm].
    """

    frame: Frame
    eye: Eye
    asked: str
    start_mm: float
    right_pd_mm: float = 0.0
    left_pd_mm: float = 0.0

    @property
    def zero_mm(self) -> float:
        """The ruler's zero, from the middle of the bridge to the observer's right [mm]."""
        return -self.frame.dbl_mm / 2.0 - self.frame.a_mm - self.start_mm

    def reading_mm(self, place_mm: float) -> float:
        """Return what the ruler shows at a place [mm].

        place_mm: from the middle of the bridge to the observer's right [mm].
        """
        return place_mm - self.zero_mm

    def centre_mm(self, eye: Eye) -> float:
        """Return where a boxed centre lies, from the middle of the bridge to the observer's right [mm].

        eye: whose.
        """
        return -eye.nasal_sign * self.frame.bridge_to_boxed_centre_mm

    def pupil_mm(self, eye: Eye) -> float:
        """Return where a pupil lies, from the middle of the bridge to the observer's right [mm].

        eye: whose.
        """
        return -eye.nasal_sign * (self.right_pd_mm if eye is Eye.RIGHT else self.left_pd_mm)

    def picture(self, *, from_mm: float, way: str) -> Drawing:
        """Return the rims above their ruler.

        from_mm: where an answer counts from [mm]; way: "right" or "left", to which it counts.
        """
        x, y = outline_rows(self.frame.outline(Eye.RIGHT))
        return Drawing(
            name="across",
            values={
                "outline_x_mm": x,
                "outline_y_mm": y,
                "dbl_mm": self.frame.dbl_mm,
                "zero_mm": self.zero_mm,
                "from_mm": from_mm,
                "way": way,
                "right_pupil_mm": self.right_pd_mm,
                "left_pupil_mm": self.left_pd_mm,
            },
        )


def reading_term(symbol: str, value: float, meaning: str) -> Term:
    """Return what the ruler shows at a place, as a term.

    symbol: of it; value: [mm]; meaning: the place.
    """
    return Term(symbol=symbol, value=value, unit="mm", digits=1, meaning=f"the ruler shows it at {meaning}")
