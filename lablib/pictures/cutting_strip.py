"""What the wheel meets round one turn, unrolled: how deep its bite is, and how thick the lens there."""

import numpy as np
from matplotlib.patches import Polygon

from lablib.pictures.captions import step_up
from lablib.pictures.cutting_data import CutView
from lablib.pictures.edge_round import axes_round
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import EDGE, OKABE_ITO, OUTLINE, Look
from lablib.pictures.window import Box

BITE_DEPTH = Look(colour=OKABE_ITO["bluish green"], dashes=(0, (2.5, 1.2)), width_pt=2.2)
# Few tops, so that the scale hardly ever changes [mm].
TOPS_MM = (6.0, 12.0, 24.0, 48.0)
_EVERY = 2


class WheelStrip:
    """A rectangle of a picture that shows bite and thickness round one turn.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.axes = axes = axes_round(picture, box_px)
        self._set_top(TOPS_MM[0])
        self.area = picture.moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **EDGE.fill())))
        self.thickness = picture.moving(axes.plot([], [], zorder=3, **OUTLINE.line())[0])
        self.bite = picture.moving(axes.plot([], [], zorder=4, **BITE_DEPTH.line())[0])

    def update(self, data: CutView) -> None:
        """Draw one turn of a cut.

        data: what to draw.
        """
        self._set_top(step_up(TOPS_MM, float(data.shown.cut.cutting.thickness_mm.max())))
        order = data.sheet.from_nasal
        thickness, bite = (
            np.append(part[order], part[order[0]]) for part in (data.thickness_mm, data.bite_mm)
        )
        angle = np.linspace(0.0, 360.0, thickness.size)
        every = slice(None, None, _EVERY)
        self.thickness.set_data(angle[every], thickness[every])
        self.bite.set_data(angle[every], bite[every])
        top = np.column_stack([angle, thickness])[every]
        self.area.set_xy(np.concatenate([top, [(360.0, 0.0), (0.0, 0.0)]]))

    def _set_top(self, top_mm: float) -> None:
        if self.axes.get_ylim() == (0.0, top_mm):
            return
        set_limits(self.axes, x=(0.0, 360.0), y=(0.0, top_mm))
        self.axes.set_yticks(np.linspace(0.0, top_mm, 4))
