"""Both outlines of a frame on paper at true size, with a ruler to check the printer.

One millimetre of the drawing is one millimetre of the page. Drawings face the wearer.
"""

from dataclasses import dataclass
from io import BytesIO

import numpy as np
from matplotlib import rc_context
from matplotlib.axes import Axes
from matplotlib.backends.backend_pdf import FigureCanvasPdf
from matplotlib.figure import Figure

from lablib.errors import require_one_of
from lablib.optics.eye import EYES, Eye
from lablib.pictures.outline_case import OutlineCase
from lablib.pictures.palette import INK, QUIET_INK

# Width and height of a sheet that lies on its side [mm] (ISO 216; letter is 11 by 8.5 inches).
PAGES_MM = {"a4": (297.0, 210.0), "letter": (279.4, 215.9)}
_MM_PER_INCH = 25.4
RULER_MM, UPRIGHT_MM = 100, 50
# From the lower edge of the sheet, and from its left edge [mm].
_RULER_UP, _UPRIGHT_LEFT, _UPRIGHT_UP = 42.0, 24.0, 70.0
_TITLE_DOWN, _MIDDLE_UP = 14.0, 122.0
_LINE, _CROSS, _BEYOND, _WORDS_BESIDE = 0.5, 5.0, 4.0, 45.0
_TITLE_PT, _WORDS_PT, _SMALL_PT = 13.0, 9.0, 7.5
# Lines of a ruler every so many millimetres, the longest first, and how long they are [mm].
_STROKES = ((10, 4.5), (5, 3.0), (1, 1.8))
_CAUTION = (
    "For practice and for checking by eye: lay a rim or a lens on the line. It is not a pattern to cut by.",
    "A lens is as large as the bottom of the groove, not as the rim that is seen. Measure the frame itself, "
    "and note its damage before it is touched.",
)
_CHECK = "Measure this line: it is 100 mm long. Print at 100 %, not fitted to the page."


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sheet:
    """Axes that cover the whole page, and the size of the page [mm]."""

    axes: Axes
    width: float
    height: float

    def line(self, x: list[float], y: list[float], **style: object) -> None:
        """Draw a line [mm]."""
        self.axes.plot(x, y, **{"color": INK, "linewidth": _LINE, "solid_capstyle": "butt"} | style)

    def words(self, x: float, y: float, text: str, **style: object) -> None:
        """Write words [mm]."""
        self.axes.text(x, y, text, **{"fontsize": _WORDS_PT, "color": INK} | style)


def outline_figure(case: OutlineCase, *, page: str = "a4") -> Figure:
    """Return the sheet as a figure of the page's size.

    case: what is drawn; page: "a4" or "letter", lying on its side.

    Raises LabError for another page.
    """
    require_one_of("page", page, tuple(PAGES_MM))
    width, height = PAGES_MM[page]
    figure = Figure(figsize=(width / _MM_PER_INCH, height / _MM_PER_INCH), frameon=False)
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    axes.set(xlim=(0.0, width), ylim=(0.0, height))
    axes.axis("off")
    sheet = _Sheet(axes=axes, width=width, height=height)
    _head(sheet, case)
    for eye in EYES:
        _rim(sheet, case, eye)
    _midline(sheet, case)
    _rulers(sheet)
    _foot(sheet, case)
    return figure


def outline_pdf(case: OutlineCase, *, page: str = "a4") -> bytes:
    """Return the sheet as a PDF file.

    case: what is drawn; page: as in `outline_figure`, which also says what it raises.
    """
    into = BytesIO()
    # No point of an outline may be left out, which is settled when its line is made; and the same case gives
    # the same file.
    with rc_context({"path.simplify": False, "pdf.fonttype": 42}):
        FigureCanvasPdf(outline_figure(case, page=page)).print_pdf(
            into, metadata={"Title": f"Outlines {case.title}", "Creator": "lablib", "CreationDate": None}
        )
    return into.getvalue()


def _head(sheet: _Sheet, case: OutlineCase) -> None:
    top = sheet.height - _TITLE_DOWN
    sheet.words(_UPRIGHT_LEFT - 9.0, top, f"Outlines at true size: {case.title}", fontsize=_TITLE_PT)
    lines = (
        "Seen by somebody who faces the wearer: the wearer's right lens is on the left of this sheet.",
        f"A {case.frame.a_mm:.2f}, B {case.frame.b_mm:.2f}, DBL {case.frame.dbl_mm:.2f} mm, "
        f"{case.frame.outline_words}",
        f"Where the dashed lines cross: the boxed centres.{_marked(case)}",
        *case.notes,
    )
    for place, text in enumerate(lines, start=1):
        sheet.words(_UPRIGHT_LEFT - 9.0, top - 1.5 - 5.0 * place, text)


def _marked(case: OutlineCase) -> str:
    has = any(case.centration(eye) is not None for eye in EYES)
    return " Ringed crosses: the centration points." if has else ""


def _middle(sheet: _Sheet, case: OutlineCase, eye: Eye) -> complex:
    """Where a boxed centre lies on the page [mm]."""
    return complex(sheet.width / 2.0 - eye.nasal_sign * case.frame.bridge_to_boxed_centre_mm, _MIDDLE_UP)


def _rim(sheet: _Sheet, case: OutlineCase, eye: Eye) -> None:
    outline, middle = case.frame.outline(eye), _middle(sheet, case, eye)
    ring = middle + outline.x_mm + 1j * outline.y_mm
    ring = np.append(ring, ring[0])
    sheet.line(ring.real, ring.imag, linewidth=0.8, gid=f"outline-{eye}")
    left, right, low, high = ring.real.min(), ring.real.max(), ring.imag.min(), ring.imag.max()
    sheet.line([left, right, right, left, left], [low, low, high, high, low], color=QUIET_INK, linewidth=0.4)
    upright = {"color": QUIET_INK, "dashes": (16, 4, 3, 4), "gid": f"upright-{eye}"}
    sheet.line([middle.real] * 2, [low - _BEYOND, high + _BEYOND], **upright)
    _centre(sheet, case, eye, middle)
    # Small lenses lie nearer to each other than the words below them.
    beside = sheet.width / 2.0 - eye.nasal_sign * max(case.frame.bridge_to_boxed_centre_mm, _WORDS_BESIDE)
    for place, text in enumerate(case.words(eye)):
        sheet.words(beside, low - 9.0 - 4.5 * place, text, ha="center")


def _centre(sheet: _Sheet, case: OutlineCase, eye: Eye, middle: complex) -> None:
    """A cross at the centration point, where the case has one."""
    point = case.centration(eye)
    if point is None:
        return
    at = middle + complex(eye.nasal_sign * point[0], point[1])
    for way, name in ((_CROSS, "across"), (1j * _CROSS, "upright")):
        ends = np.array([at - way, at + way])
        sheet.line(ends.real, ends.imag, linewidth=0.9, gid=f"centration-{name}-{eye}")
    turn = 1.2 * np.exp(2j * np.pi * np.arange(49) / 48) + at
    sheet.line(turn.real, turn.imag, linewidth=0.9)


def _midline(sheet: _Sheet, case: OutlineCase) -> None:
    half = case.frame.bridge_to_boxed_centre_mm + case.frame.a_mm / 2.0 + _BEYOND
    middle = sheet.width / 2.0
    dashes = {"color": QUIET_INK, "dashes": (16, 4, 3, 4)}
    sheet.line([middle - half, middle + half], [_MIDDLE_UP] * 2, gid="midline", **dashes)
    sheet.line([middle] * 2, [_MIDDLE_UP - 12.0, _MIDDLE_UP + 12.0], gid="bridge", **dashes)
    sheet.words(middle, _MIDDLE_UP - 15.5, "middle of\nthe bridge", ha="center", va="top", fontsize=_SMALL_PT)


def _rulers(sheet: _Sheet) -> None:
    start = sheet.width / 2.0 - RULER_MM / 2.0
    _ruler(sheet, complex(start, _RULER_UP), 1.0, RULER_MM, "ruler")
    _ruler(sheet, complex(_UPRIGHT_LEFT, _UPRIGHT_UP), 1j, UPRIGHT_MM, "ruler-upright")
    sheet.words(sheet.width / 2.0, _RULER_UP - 5.5, _CHECK, ha="center")
    text = "and this one: 50 mm, or the\nprinter stretches one way"
    sheet.words(_UPRIGHT_LEFT - 9.0, _UPRIGHT_UP - 3.0, text, fontsize=_SMALL_PT, va="top")


def _ruler(sheet: _Sheet, start: complex, way: complex, length: int, name: str) -> None:
    """A line with strokes to one side, and a number at every tenth."""
    end = start + way * length
    sheet.line([start.real, end.real], [start.imag, end.imag], linewidth=0.8, gid=name)
    for at in range(length + 1):
        stroke = next(size for step, size in _STROKES if at % step == 0)
        foot = start + way * at
        tip = foot + 1j * way * stroke * (1.0 if way == 1.0 else -1.0)
        sheet.line([foot.real, tip.real], [foot.imag, tip.imag], linewidth=0.4)
        if at % _STROKES[0][0] == 0:
            beyond = foot + (tip - foot) * 1.35
            place = {"ha": "center", "va": "bottom"} if way == 1.0 else {"ha": "left", "va": "center"}
            sheet.words(beyond.real, beyond.imag, str(at), fontsize=_SMALL_PT, **place)


def _foot(sheet: _Sheet, case: OutlineCase) -> None:
    for place, text in enumerate((*_CAUTION, case.source)):
        sheet.words(_UPRIGHT_LEFT - 9.0, 24.0 - 4.5 * place, text, fontsize=_SMALL_PT + 0.5)
