"""Every distance of a multifocal pair, as lines to draw with the numbers that stand beside them."""

from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.progressive import (
    FITTING_CROSS,
    NASAL_ENGRAVING,
    NEAR_CIRCLE,
    TEMPORAL_ENGRAVING,
)
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment_layout import SegmentLayout
from lablib.pictures.multifocal_data import PairLaidOut

# Rows below the box, and columns beside it, from the box [mm].
ROWS_MM, COLUMNS_MM = (4.5, 11.5, 18.5), (2.5, 5.0)
_ABOVE_MM, _HIGHER_MM, _GAP_MM = 3.5, 10.0, 1.6
# Beside the marks of a progressive: how far from the cross its level is drawn, and from a circle [mm].
_FROM_CROSS_MM, _FROM_CIRCLE_MM = 9.0, 1.5
_NOTHING = "0.0"


@dataclass(frozen=True, slots=True, kw_only=True)
class Distance:
    """One distance as it is drawn.

    start, end: x + iy from the middle of the bridge and the midline [mm].
    words: what stands beside it.
    way: to which side of its middle the words stand, x + iy.
    wearers: whether the wearer gave it; else it belongs to the frame or to the chart.
    leads: points from which a thin line leads to it, each with where that ends, x + iy [mm].
    """

    start: complex
    end: complex
    words: str
    way: complex
    wearers: bool = False
    leads: tuple[tuple[complex, complex], ...] = ()


def distances(data: PairLaidOut) -> tuple[Distance, ...]:
    """Return every distance that is drawn.

    data: the pair.
    """
    whole = _of_segment if data.has_segments else _of_progressive
    each = _of_engravings if data.engravings_alone else whole
    return (*_of_frame(data), *each(data, Eye.RIGHT), *each(data, Eye.LEFT))


def aside(away: float, plus: str, minus: str) -> str:
    """Return a distance with the word for its direction; the number alone where it is nothing.

    away: [mm]; plus, minus: the words for either direction.
    """
    figure = f"{abs(away):.1f}"
    if figure == _NOTHING:
        return figure
    return f"{figure} {plus if away > 0.0 else minus}"


def _of_frame(data: PairLaidOut) -> tuple[Distance, ...]:
    frame, top = data.frame, 0.5j * data.frame.b_mm
    inner, boxed = frame.dbl_mm / 2.0, frame.bridge_to_boxed_centre_mm
    first, second = top + 1j * _ABOVE_MM, top + 1j * _HIGHER_MM
    gap = complex(_GAP_MM - inner)
    return (
        Distance(start=first - inner - frame.a_mm, end=first - inner, words=f"A {frame.a_mm:.1f}", way=1j),
        Distance(start=first - inner, end=first + inner, words=f"DBL {frame.dbl_mm:.1f}", way=1j),
        Distance(start=second, end=second + boxed, words=f"(A + DBL) / 2 = {boxed:.1f}", way=1j),
        Distance(start=gap - top, end=gap + top, words=f"B {frame.b_mm:.1f}", way=1 - 1j),
    )


def _of_segment(data: PairLaidOut, eye: Eye) -> tuple[Distance, ...]:
    layout: SegmentLayout = data.layout(eye)
    centre = data.at(eye, *layout.distance_centre_mm)
    middle = data.at(eye, layout.total_inset_mm, layout.top_up_mm)
    inset = f"inset {layout.segment_inset_mm:.1f}"
    total = f"total inset {aside(layout.total_inset_mm, 'in', 'out')}"
    boxed = data.at(eye, 0.0, 0.0)
    return (
        *_from_bridge(data, eye, centre, 0, f"far {layout.far_pd_mm:.1f}", layout.distance_centre_mm[0]),
        _row(data, eye, 1, 0j, middle, f"near {layout.near_pd_mm:.1f}", -1j, wearers=True),
        _row(data, eye, 1, middle, centre, inset, _temporal(eye)),
        _row(data, eye, 2, middle, boxed, total, _temporal(eye)),
        *_uprights(data, eye, middle),
    )


def _of_progressive(data: PairLaidOut, eye: Eye) -> tuple[Distance, ...]:
    layout: ProgressiveLayout = data.layout(eye)
    places = {mark.name: data.at(eye, mark.in_mm, mark.up_mm) for mark in layout.marks}
    cross, near = places[FITTING_CROSS], places[NEAR_CIRCLE]
    nasal, temporal = (places[name] for name in (NASAL_ENGRAVING, TEMPORAL_ENGRAVING))
    design, out = layout.design, _temporal(eye)
    level = cross + out * _FROM_CROSS_MM
    beside = near - out * (design.near_circle_diameter_mm / 2.0 + _FROM_CIRCLE_MM)
    over = 1j * (near.imag + design.near_circle_diameter_mm / 2.0 + _FROM_CIRCLE_MM)
    return (
        *_from_bridge(data, eye, cross, 0, f"far {layout.monocular_pd_mm:.1f}", layout.cross_mm[0]),
        _row(data, eye, 1, temporal, nasal, f"engravings {design.engravings_apart_mm:.1f}", -1j),
        *_uprights(data, eye, cross),
        Distance(
            start=level,
            end=complex(level.real, nasal.imag),
            words=f"{cross.imag - nasal.imag:.1f}",
            way=out + 1j,
        ),
        Distance(
            start=beside,
            end=complex(beside.real, cross.imag),
            words=f"{cross.imag - near.imag:.1f}",
            way=-out,
        ),
        Distance(
            start=cross.real + over,
            end=near.real + over,
            words=aside(design.near_inset_mm, "in", "out"),
            way=out,
        ),
    )


def _of_engravings(data: PairLaidOut, eye: Eye) -> tuple[Distance, ...]:
    layout: ProgressiveLayout = data.layout(eye)
    boxed = data.at(eye, 0.0, 0.0)
    nasal, temporal = (layout.mark(name) for name in (NASAL_ENGRAVING, TEMPORAL_ENGRAVING))
    ends = [data.at(eye, mark.in_mm, mark.up_mm) for mark in (nasal, temporal)]
    apart = f"engravings {layout.design.engravings_apart_mm:.1f}"
    return (
        _row(data, eye, 0, boxed, ends[0], aside(nasal.in_mm, "in", "out"), -1j),
        _row(data, eye, 0, boxed, ends[1], aside(temporal.in_mm, "in", "out"), -1j),
        _row(data, eye, 1, *ends, apart, -1j),
        _from_midline(data, eye, ends[1], 0),
    )


def _from_bridge(
    data: PairLaidOut, eye: Eye, at: complex, row: int, words: str, inwards: float
) -> tuple[Distance, Distance]:
    """The wearer's distance to a point, and how far that lies from the boxed centre."""
    return (
        _row(data, eye, row, 0j, at, words, -1j, wearers=True),
        _row(data, eye, row, at, data.at(eye, 0.0, 0.0), aside(inwards, "in", "out"), _temporal(eye)),
    )


def _row(
    data: PairLaidOut,
    eye: Eye,
    row: int,
    start: complex,
    end: complex,
    words: str,
    way: complex,
    *,
    wearers: bool = False,
) -> Distance:
    low = -data.frame.b_mm / 2.0 - ROWS_MM[row]
    feet = [complex(point.real, low) for point in (start, end)]
    leads = tuple((point, foot) for point, foot in zip((start, end), feet, strict=True) if point)
    return Distance(start=feet[0], end=feet[1], words=words, way=way, wearers=wearers, leads=leads)


def _uprights(data: PairLaidOut, eye: Eye, at: complex) -> tuple[Distance, Distance]:
    """The height of a point above the lowest tangent, and how far it lies from the midline."""
    column = _column(data, eye, 0)
    height = Distance(
        start=complex(column, -data.frame.b_mm / 2.0),
        end=complex(column, at.imag),
        words=f"height {data.height_mm(eye):.1f}",
        way=_temporal(eye) - 1j,
        wearers=True,
        leads=((at, complex(column, at.imag)),),
    )
    return height, _from_midline(data, eye, at, 1)


def _from_midline(data: PairLaidOut, eye: Eye, at: complex, which: int) -> Distance:
    column = _column(data, eye, which)
    return Distance(
        start=complex(column, 0.0),
        end=complex(column, at.imag),
        words=aside(at.imag, "above", "below"),
        way=_temporal(eye) + 1j,
        leads=((at, complex(column, at.imag)),),
    )


def _column(data: PairLaidOut, eye: Eye, which: int) -> float:
    edge = data.frame.bridge_to_boxed_centre_mm + data.frame.a_mm / 2.0
    return _temporal(eye) * (edge + COLUMNS_MM[which])


def _temporal(eye: Eye) -> int:
    """Which way the temple lies: 1 to the observer's right, -1 to the left."""
    return -eye.nasal_sign
