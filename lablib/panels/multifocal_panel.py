"""The panel of multifocals: a segment or a progressive laid out on both eyes, with every distance."""

from collections.abc import Sequence

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.multifocal_pair import TwoHeights
from lablib.optics.progressive import progressive, progressive_names
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment import segment, segment_names
from lablib.optics.segment_blank import CutOut, segment_blank, segment_blank_names
from lablib.optics.segment_layout import SegmentLayout, segment_inset_mm
from lablib.optics.segment_prism import image_jump_prism_d
from lablib.panels.multifocal_words import rows, said
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.multifocal import MultifocalPicture
from lablib.pictures.multifocal_data import Layout, PairLaidOut

_LENS, _FRAME, _WEARER = ({"group": words} for words in ("Lens", "Frame", "Wearer"))
_SEGMENTS = {segment(name).words: name for name in segment_names()}
_CHARTS = {f"progressive, {name}": name for name in progressive_names()}
_NO_BLANK = "no blank"
_BLANKS = {f"blank {segment_blank(name).diameter_mm:g}": name for name in segment_blank_names()}
ALL_MARKS, ENGRAVINGS_ALONE = "all", "engravings alone"
_SHAPE = OutlineShape.superellipse(2.6)


def _mm(name: str, label: str, low: float, high: float, value: float, group: dict) -> Slider:
    return Slider(name=name, label=label, unit="mm", low=low, high=high, step=0.5, value=value, **group)


class MultifocalPanel(Panel):
    """Both lenses of a pair, with a segment or a progressive in each."""

    draws = MultifocalPicture
    note = (
        "Sizes and charts are invented: a real lens is laid out and marked by its own maker's chart. Heights "
        "that differ, a height too small and prism at near are asked, never put right at the bench."
    )
    controls = (
        Choice(
            name="design",
            label="Design",
            options=(*_SEGMENTS, *_CHARTS),
            value="flat top 28",
            **_LENS,
        ),
        Choice(name="marks", label="Marks", options=(ALL_MARKS, ENGRAVINGS_ALONE), value=ALL_MARKS, **_LENS),
        Choice(name="blank", label="Blank", options=(_NO_BLANK, *_BLANKS), value=_NO_BLANK, **_LENS),
        Slider(
            name="addition_d",
            label="Addition",
            unit="D",
            low=0.75,
            high=3.5,
            step=0.25,
            value=2.0,
            **_LENS,
        ),
        _mm("a_mm", "Width A", 40.0, 62.0, 54.0, _FRAME),
        _mm("b_mm", "Height B", 24.0, 50.0, 38.0, _FRAME),
        _mm("dbl_mm", "Bridge DBL", 14.0, 24.0, 18.0, _FRAME),
        _mm("right_far_mm", "Right far", 26.0, 38.0, 32.0, _WEARER),
        _mm("left_far_mm", "Left far", 26.0, 38.0, 32.0, _WEARER),
        _mm("right_near_mm", "Right near", 24.0, 37.0, 30.0, _WEARER),
        _mm("left_near_mm", "Left near", 24.0, 37.0, 30.0, _WEARER),
        _mm("right_height_mm", "Right height", 8.0, 36.0, 18.0, _WEARER),
        _mm("left_height_mm", "Left height", 8.0, 36.0, 18.0, _WEARER),
    )

    def compute(self, values: Values) -> PairLaidOut:
        """Return the pair laid out.

        values: by the control's name.

        Raises LabError for distances or heights that cannot be, and for what a design does not have.
        """
        frame = Frame(**{key: values[key] for key in ("a_mm", "b_mm", "dbl_mm")}, shape=_SHAPE)
        layouts = {eye.value: _layout(frame, eye, values) for eye in Eye}
        segments = _SEGMENTS.get(values["design"])
        jump = 0.0
        if segments:
            below = segment(segments).centre_below_top_mm
            jump = image_jump_prism_d(values["addition_d"], centre_below_top_mm=below)
        return PairLaidOut(
            frame=frame,
            **layouts,
            heights=TwoHeights(**{f"{eye}_mm": values[f"{eye}_height_mm"] for eye in Eye}),
            insets_mm=tuple(_inset(values, eye) for eye in Eye),
            jump_prism_d=jump,
            cut_outs=_cut_outs(layouts, values),
            engravings_alone=values["marks"] == ENGRAVINGS_ALONE,
        )

    def numbers(self, data: PairLaidOut) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: what is shown.
        """
        return rows(data)

    def sentence(self, data: PairLaidOut) -> str:
        """Return what lies where, and what must be asked.

        data: what is shown.
        """
        return said(data)


def _layout(frame: Frame, eye: Eye, values: Values) -> Layout:
    far, height = values[f"{eye}_far_mm"], values[f"{eye}_height_mm"]
    chart = _CHARTS.get(values["design"])
    if chart:
        place = {"monocular_pd_mm": far, "height_mm": height}
        return ProgressiveLayout(frame=frame, eye=eye, design=progressive(chart), **place)
    return SegmentLayout(
        frame=frame,
        eye=eye,
        segment=segment(_SEGMENTS[values["design"]]),
        far_pd_mm=far,
        near_pd_mm=values[f"{eye}_near_mm"],
        segment_height_mm=height,
    )


def _inset(values: Values, eye: Eye) -> float:
    return segment_inset_mm(far_pd_mm=values[f"{eye}_far_mm"], near_pd_mm=values[f"{eye}_near_mm"])


def _cut_outs(layouts: dict[str, Layout], values: Values) -> tuple[CutOut, ...]:
    if values["blank"] == _NO_BLANK:
        return ()
    blank = segment_blank(_BLANKS[values["blank"]])
    return tuple(CutOut(layout=layout, blank=blank) for layout in layouts.values())
