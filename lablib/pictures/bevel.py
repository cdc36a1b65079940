"""An edge in its frame: unrolled, with its bevel or groove beside the rim's curve, and cut across."""

from lablib.pictures.bevel_data import EdgeView
from lablib.pictures.bevel_round import LIMIT, RIM_CURVE, TIP, BevelRound
from lablib.pictures.bevel_section import BevelSection
from lablib.pictures.captions import HEADING_PT, ScaleBar, add_key, moving_words, write_still
from lablib.pictures.kept import KeptPicture

_PLOT = (44.0, 330.0, 700.0, 528.0)
_SECTION = (8.0, 8.0, 712.0, 276.0)
_ACROSS_PX = 372.0
_WORDS_X, _WORDS_Y, _LINE_PX = 520.0, 236.0, 20.0
_KEY = (
    (44.0, 562.0, TIP, "tip, groove's middle, lens at a hole"),
    (330.0, 562.0, RIM_CURVE, "rim, not bent"),
    (470.0, 562.0, LIMIT, "limit: no nearer to a face"),
)
_BEHIND = {"bevel": ("front to tip", "tip to back"), "groove": ("wall in front", "wall behind")}


class BevelPicture(KeptPicture):
    """The edge of one lens and what holds it."""

    width_px = 720
    height_px = 600

    def build(self) -> None:
        """Add both drawings, their headings and the key."""
        write_still(self, (10, 584), "The edge unrolled: front at 0, depth behind it [mm]", size=HEADING_PT)
        write_still(
            self, (10, 290), "Cut across at the place shown: front up, outwards to the right", size=HEADING_PT
        )
        self.round = BevelRound(self, _PLOT)
        self.section = BevelSection(self, _SECTION, across_px=_ACROSS_PX)
        axes = self.section.window.axes
        self.words = [moving_words(self, axes, (_WORDS_X, _WORDS_Y - row * _LINE_PX)) for row in range(4)]
        self.scale = ScaleBar(self.section.window, 640, 22)
        add_key(self, _KEY)

    def update(self, data: EdgeView) -> None:
        """Draw an edge.

        data: what to draw.
        """
        self.round.update(data)
        self.section.update(data)
        self.scale.update()
        for label, words in zip(self.words, _lines(data), strict=True):
            label.set_text(words)


def _lines(data: EdgeView) -> tuple[str, str, str, str]:
    """What is written beside the cut: the edge, and what lies in front of and behind the line."""
    edge = f"edge {data.across.edge_mm:.2f} mm"
    if data.line_mm is None:
        return (
            edge,
            f"at the hole {data.here(data.at_hole_mm):.2f} mm",
            f"a hole needs {data.limit_mm:g} mm",
            "",
        )
    ahead, behind = _BEHIND[data.mounting]
    off = data.across.groove_mm / 2.0 if data.mounting == "groove" else 0.0
    tip = data.here(data.line_mm)
    rim = ""
    if data.rim_mm is not None:
        rim = f"rim {abs(data.here(data.rim_mm) - tip):.2f} mm off the tip"
    return edge, f"{ahead} {tip - off:.2f} mm", f"{behind} {data.across.edge_mm - tip - off:.2f} mm", rim
