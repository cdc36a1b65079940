"""Colours by what they stand for, each with a line style or a mark so that colour is never the only sign.

Source: M. Okabe and K. Ito, Color Universal Design, University of Tokyo, 2002 (revised 2008): eight colours
that people with any common kind of colour vision tell apart.
"""

from dataclasses import dataclass
from types import MappingProxyType

OKABE_ITO = MappingProxyType(
    {
        "black": "#000000",
        "orange": "#e69f00",
        "sky blue": "#56b4e9",
        "bluish green": "#009e73",
        "yellow": "#f0e442",
        "blue": "#0072b2",
        "vermilion": "#d55e00",
        "reddish purple": "#cc79a7",
    }
)
# The only two that may carry words on white (4.5:1 or more, WCAG 2.2 criterion 1.4.3), and a grey.
INK = OKABE_ITO["black"]
BLUE_INK = OKABE_ITO["blue"]
QUIET_INK = "#595959"
PAPER = "#ffffff"


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How one thing is drawn wherever it appears.

    colour: as "#rrggbb".
    dashes: matplotlib's line style; empty for what is never a line.
    mark: matplotlib's marker; empty for what is never a point.
    width_pt: line width [pt].
    opacity: of a fill, 0 to 1.
    hollow: whether a mark is an outline only.
    """

    colour: str
    dashes: str | tuple = ""
    mark: str = ""
    width_pt: float = 1.6
    opacity: float = 1.0
    hollow: bool = False

    def line(self) -> dict[str, object]:
        """Return matplotlib's keywords for a line."""
        return {"color": self.colour, "linestyle": self.dashes, "linewidth": self.width_pt}

    def point(self) -> dict[str, object]:
        """Return matplotlib's keywords for a marked point."""
        return {
            "color": self.colour,
            "linestyle": "none",
            "marker": self.mark,
            "markerfacecolor": PAPER if self.hollow else self.colour,
            "markersize": 8,
            "markeredgewidth": self.width_pt,
        }

    def fill(self) -> dict[str, object]:
        """Return matplotlib's keywords for a filled area without an edge."""
        return {"facecolor": self.colour, "alpha": self.opacity, "linewidth": 0}


FRONT_SURFACE = Look(colour=OKABE_ITO["blue"], dashes="solid", width_pt=2.0)
BACK_SURFACE = Look(colour=OKABE_ITO["vermilion"], dashes=(0, (7, 2)), width_pt=2.0)
OUTLINE = Look(colour=INK, dashes="solid", width_pt=1.4)
BLANK = Look(colour=QUIET_INK, dashes=(0, (1.5, 2)), width_pt=1.2)
MIDLINE = Look(colour=QUIET_INK, dashes=(0, (8, 3, 1.5, 3)), width_pt=0.8)
GLASS = Look(colour=OKABE_ITO["sky blue"], opacity=0.3)
CUT_AWAY = Look(colour=QUIET_INK, opacity=0.12)
EDGE = Look(colour=OKABE_ITO["orange"], opacity=0.45)
TOO_SMALL = Look(colour=OKABE_ITO["vermilion"], dashes="solid", width_pt=2.4)
CYLINDER_AXIS = Look(colour=OKABE_ITO["bluish green"], dashes=(0, (5, 1.5)), width_pt=1.6)
CUTTING_LINE = Look(colour=QUIET_INK, dashes=(0, (3, 2)), width_pt=1.0)
GREATEST = Look(colour=OKABE_ITO["vermilion"], mark="^")
LEAST = Look(colour=OKABE_ITO["blue"], mark="v")
CHUCK_AXIS = Look(colour=INK, mark="o", hollow=True)
BLOCK = Look(colour=OKABE_ITO["reddish purple"], dashes="solid", width_pt=1.8, opacity=0.25)
BITE = Look(colour=OKABE_ITO["orange"], opacity=0.6)
START_RIM = Look(colour=INK, dashes=(0, (4, 2)), width_pt=1.2)
TURNS = Look(colour=OKABE_ITO["vermilion"], dashes="solid", width_pt=2.2)
HOLDS = Look(colour=OKABE_ITO["blue"], dashes=(0, (4, 1.5)), width_pt=2.2)
TOO_MUCH = Look(colour=OKABE_ITO["vermilion"], opacity=0.35)
JOINT = Look(colour=OKABE_ITO["sky blue"], opacity=0.45)
WEAKEST_JOINT = Look(colour=OKABE_ITO["blue"], opacity=0.85)
WHEEL = Look(colour=OKABE_ITO["vermilion"], opacity=0.7)
DOUBT = Look(colour=OKABE_ITO["sky blue"], opacity=0.6)
LEAST_MARGIN = Look(colour=OKABE_ITO["vermilion"], mark="D")
CRIBBING = Look(colour=INK, mark="s", width_pt=1.4, hollow=True)
OPTICAL_CENTRE = Look(colour=INK, mark="+")
BOXED_CENTRE = Look(colour=INK, mark="x")
PUPIL = Look(colour=INK, mark="8")
ENGRAVING = Look(colour=OKABE_ITO["reddish purple"], mark="P", hollow=True)

LOOKS = MappingProxyType({name: value for name, value in globals().items() if isinstance(value, Look)})
