"""A lens measure on a surface: its pins in three drawings, and its dial as a scale beside the power."""

from lablib.optics.power import written_power
from lablib.pictures.captions import HEADING_PT, WORDS_PT, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.level_scale import LevelScale
from lablib.pictures.measure_drawings import AboveDrawing, CutDrawing, EndDrawing, Held
from lablib.pictures.palette import INK, OKABE_ITO, Look
from lablib.pictures.window import Box, place, shown_px

READING = Look(colour=OKABE_ITO["vermilion"], mark="v", width_pt=1.6)
POWER = Look(colour=OKABE_ITO["blue"], mark="^", width_pt=1.6)
# The scale runs so far either way: more than any surface of the panel reads.
SCALE_D = 16
_DIAL: Box = (24.0, 64.0, 446.0, 122.0)
_ROOM: Box = (6.0, 26.0, 464.0, 132.0)
_MARK_PX, _WORDS_PX, _NUMBERS_Y_PX = 11.0, 28.0, 42.0
_HEADINGS = (
    ((10.0, 388.0), "Cut along the three pins, held square"),
    ((478.0, 388.0), "From above: where the pins stand"),
    ((478.0, 166.0), "Seen along the pins: how it is held"),
    ((10.0, 148.0), "What the dial shows, and the power in this lens [D]"),
)


class MeasurePicture(KeptPicture):
    """The three pins on the surface, each drawing true to its own scale, and what the dial makes of them."""

    width_px = 720
    height_px = 404

    def build(self) -> None:
        """Add the three drawings and the scale of the dial."""
        self.cut = CutDrawing(self, (8.0, 182.0, 462.0, 374.0))
        self.above = AboveDrawing(self, (476.0, 190.0, 714.0, 376.0))
        self.end = EndDrawing(self, (476.0, 22.0, 714.0, 150.0))
        self._build_dial()
        for at, words in _HEADINGS:
            write_still(self, at, words, size=HEADING_PT)

    def update(self, data: Held) -> None:
        """Draw the measure as it is held.

        data: what was computed.
        """
        for drawing in (self.cut, self.above, self.end):
            drawing.update(data)
        self._set(
            self.reading, self.reading_words, f"dial {written_power(data.reading_d)}", data.reading_d, 1
        )
        self._set(self.power, self.power_words, f"power {written_power(data.power_d)}", data.power_d, -1)

    def _build_dial(self) -> None:
        marks = {"every_d": 2, "numbered_d": 8, "numbers_y_px": _NUMBERS_Y_PX}
        self.scale = LevelScale(self, _DIAL, most_d=SCALE_D, **marks)
        axes = self.dial = self.scale.axes
        self.reading, self.power = (
            self.moving(axes.plot([], [], zorder=6, **look.point())[0]) for look in (READING, POWER)
        )
        style = {
            "fontsize": WORDS_PT,
            "ha": "center",
            "va": "center",
            "zorder": 9,
            "color": INK,
            "clip_on": False,
        }
        self.reading_words, self.power_words = (
            self.label(axes, transform=shown_px(self), **style) for _ in range(2)
        )

    def _set(self, mark, label, words: str, power_d: float, side: int) -> None:
        """Put a mark and its words above or below the scale."""
        mark.set_data([power_d], [side * _MARK_PX])
        y = (_DIAL[1] + _DIAL[3]) / 2.0 + side * _WORDS_PX
        place(label, words, [(self.scale.px(power_d), y, 0, 0)], inside=_ROOM, taken=[])
