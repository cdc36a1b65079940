"""The optical cross: a lens with its two meridians and one that turns, and its power all round."""

from lablib.pictures.captions import HEADING_PT, add_key, moving_words, write_still
from lablib.pictures.cross_curve import CURVE, EQUIVALENT, CrossCurve
from lablib.pictures.cross_data import CrossThere
from lablib.pictures.cross_front import MINUS_AXIS, PLUS_AXIS, TURNING, CrossFront
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import INK, QUIET_INK


class CrossPicture(KeptPicture):
    """A lens as an observer facing the wearer sees it, its power over the meridians, and its two forms.

    It shows the lens alone: whichever form it was set in, the drawing is the same.
    """

    width_px = 720
    height_px = 420

    def build(self) -> None:
        """Add lens, curve, both forms and the key."""
        self.front = CrossFront(self, (2.0, 62.0, 396.0, 394.0))
        self.curve = CrossCurve(self, (440.0, 148.0, 700.0, 390.0))
        write_still(self, (10.0, 408.0), "Facing the wearer: the optical cross", size=HEADING_PT)
        write_still(self, (404.0, 408.0), "Power [D] along each meridian [degrees]", size=HEADING_PT)
        self.minus_form, self.plus_form, self.read_off = (
            moving_words(self, self.curve.axes, (550.0, y), size=HEADING_PT, color=INK) for y in _LINES_PX
        )
        add_key(self, _KEY)
        write_still(self, (10.0, 16.0), _RULE, color=QUIET_INK)

    def update(self, data: CrossThere) -> None:
        """Draw a lens and the power on one meridian.

        data: what to draw.
        """
        self.front.update(data)
        self.curve.update(data)
        for label, form in ((self.minus_form, data.minus), (self.plus_form, data.plus)):
            label.set_text("hidden" if data.is_hidden else str(form))
        self.read_off.set_text(data.read_off)


_LINES_PX = (110.0, 87.0, 64.0)
_KEY = (
    (404.0, _LINES_PX[0], MINUS_AXIS, "minus form"),
    (404.0, _LINES_PX[1], PLUS_AXIS, "plus form"),
    (404.0, _LINES_PX[2], TURNING, "turned meridian"),
    (10.0, 40.0, CURVE, "power along each meridian"),
    (224.0, 40.0, EQUIVALENT, "spherical equivalent"),
)
_RULE = "The line of a form is its axis: the power along it is the sphere of that form."
