"""The sign-off sheet of a lesson on paper: its tasks, three dated tries of each, the trainer's signature."""

from collections.abc import Sequence
from io import BytesIO

from matplotlib import rc_context
from matplotlib.axes import Axes
from matplotlib.backends.backend_pdf import FigureCanvasPdf
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.textpath import text_to_path

from lablib.errors import require_one_of
from lablib.job.signoff import TRIES, BenchTasks
from lablib.pictures.outline_sheet import PAGES_MM
from lablib.pictures.palette import INK, QUIET_INK

_MM_PER_INCH, _POINTS_PER_INCH = 25.4, 72.0
_MARGIN, _TITLE_DOWN, _NAMES_DOWN, _TABLE_DOWN = 14.0, 16.0, 28.0, 38.0
_TITLE_PT, _WORDS_PT, _SMALL_PT = 14.0, 9.5, 7.5
# Widths of a try and of the signature; the two columns of words share what is left, the first a little more.
_TRY, _SIGN, _FIRST_SHARE = 33.0, 40.0, 0.53
_LINE_HIGH, _ROW_LEAST, _PAD, _HEAD_HIGH = 4.6, 17.0, 2.0, 9.0
_FOOT = (
    "This workbook has tested no hands: what was seen at the bench is signed by whoever saw it. It does not "
    "show fitness to work unsupervised.",
    "Three tries on three dates. Write what came out, in numbers where there is one. A try that failed stays "
    "on the sheet. Local rules and the manual of the machine come first.",
)


def signoff_figure(tasks: BenchTasks, *, page: str = "a4") -> Figure:
    """Return the sheet as a figure of the page's size.

    tasks: of a lesson; page: "a4" or "letter", lying on its side.

    Raises LabError for another page.
    """
    require_one_of("page", page, tuple(PAGES_MM))
    width, height = PAGES_MM[page]
    figure = Figure(figsize=(width / _MM_PER_INCH, height / _MM_PER_INCH), frameon=False)
    axes = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    axes.set(xlim=(0.0, width), ylim=(0.0, height))
    axes.axis("off")
    _head(axes, tasks, width, height)
    _foot(axes, tasks, width, _table(axes, tasks, width, height))
    return figure


def signoff_pdf(tasks: BenchTasks, *, page: str = "a4") -> bytes:
    """Return the sheet as a PDF file.

    tasks: of a lesson; page: as in `signoff_figure`, which also says what it raises.
    """
    into = BytesIO()
    title = f"Sign-off sheet, lesson {tasks.number}"
    # The same tasks give the same file.
    with rc_context({"pdf.fonttype": 42}):
        FigureCanvasPdf(signoff_figure(tasks, page=page)).print_pdf(
            into, metadata={"Title": title, "Creator": "lablib", "CreationDate": None}
        )
    return into.getvalue()


def wrapped(text: str, width_mm: float, *, size_pt: float = _WORDS_PT) -> list[str]:
    """Return a text in lines that are no wider than a width.

    text: plain words, each narrower than the width.
    width_mm: [mm]; size_pt: of its letters [pt].
    """
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and _wide_mm(longer, size_pt) <= width_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _wide_mm(text: str, size_pt: float) -> float:
    wide, _, _ = text_to_path.get_text_width_height_descent(text, FontProperties(size=size_pt), ismath=False)
    return wide / _POINTS_PER_INCH * _MM_PER_INCH


def _columns(width: float) -> list[float]:
    """Where the columns begin, and where the last ends [mm]."""
    words = width - 2.0 * _MARGIN - TRIES * _TRY - _SIGN
    widths = (words * _FIRST_SHARE, words * (1.0 - _FIRST_SHARE), *[_TRY] * TRIES, _SIGN)
    edges = [_MARGIN]
    for one in widths:
        edges.append(edges[-1] + one)
    return edges


def _head(axes: Axes, tasks: BenchTasks, width: float, height: float) -> None:
    title = f"Sign-off sheet: lesson {tasks.number}, {tasks.title}"
    _words(axes, _MARGIN, height - _TITLE_DOWN, title, fontsize=_TITLE_PT)
    minutes = f"about {tasks.bench_minutes} minutes at the bench"
    _words(axes, width - _MARGIN, height - _TITLE_DOWN, minutes, ha="right", color=QUIET_INK)
    third = (width - 2.0 * _MARGIN) / 3.0
    for place, name in enumerate(("apprentice", "trainer", "bench")):
        left = _MARGIN + place * third
        _words(axes, left, height - _NAMES_DOWN, name, color=QUIET_INK)
        _line(axes, [left + 26.0, left + third - 6.0], [height - _NAMES_DOWN - 1.5] * 2)


def _table(axes: Axes, tasks: BenchTasks, width: float, height: float) -> float:
    """Draw the table, and return where it ends [mm]."""
    edges = _columns(width)
    top = height - _TABLE_DOWN
    levels = [top, top - _HEAD_HIGH]
    heads = ("task", "right when", *(f"try {one}" for one in range(1, TRIES + 1)), "trainer signs")
    for left, head in zip(edges, heads, strict=False):
        _words(axes, left + _PAD, top - 5.8, head, color=QUIET_INK)
    for task in tasks.tasks:
        levels.append(levels[-1] - _row(axes, edges, levels[-1], (task.done, task.right_when)))
    for level in levels:
        _line(axes, [edges[0], edges[-1]], [level] * 2)
    for edge in edges:
        _line(axes, [edge] * 2, [levels[0], levels[-1]])
    return levels[-1]


def _row(axes: Axes, edges: Sequence[float], top: float, texts: Sequence[str]) -> float:
    """Write a row, and return how high it is [mm]."""
    columns = [
        wrapped(text, right - left - 2.0 * _PAD)
        for text, left, right in zip(texts, edges, edges[1:], strict=False)
    ]
    for left, lines in zip(edges, columns, strict=False):
        for number, line in enumerate(lines):
            _words(axes, left + _PAD, top - 5.0 - number * _LINE_HIGH, line)
    for left in edges[len(texts) : len(texts) + TRIES]:
        for down, name in ((4.5, "date"), (10.5, "came out")):
            _words(axes, left + _PAD, top - down, name, fontsize=_SMALL_PT, color=QUIET_INK)
    return max(_ROW_LEAST, 3.0 + _LINE_HIGH * max(map(len, columns)))


def _foot(axes: Axes, tasks: BenchTasks, width: float, below: float) -> None:
    down = below - 8.0
    for text, colour in ((tasks.caution, INK), *((text, QUIET_INK) for text in _FOOT)):
        for line in wrapped(text, width - 2.0 * _MARGIN):
            _words(axes, _MARGIN, down, line, color=colour)
            down -= _LINE_HIGH
        down -= 1.4


def _words(axes: Axes, x: float, y: float, text: str, **style: object) -> None:
    axes.text(x, y, text, **{"fontsize": _WORDS_PT, "color": INK} | style)


def _line(axes: Axes, x: list[float], y: list[float]) -> None:
    axes.plot(x, y, color=INK, linewidth=0.5, solid_capstyle="butt")
