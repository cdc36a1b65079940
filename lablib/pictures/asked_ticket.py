"""A job ticket on paper: a field for all that is ordered; the doubtful ones are ringed once it is over."""

from dataclasses import dataclass
from itertools import pairwise

from matplotlib.patches import Ellipse, Rectangle

from lablib.errors import LabError, require_one_of
from lablib.pictures.asked_base import ASIDE_PX, BOX_PX, HEADING_Y_PX, KEY_Y_PX, Asked, read_case
from lablib.pictures.asked_sign import words_in
from lablib.pictures.captions import HEADING_PT, moving_words, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.label import Label
from lablib.pictures.palette import INK, OKABE_ITO, PAPER, QUIET_INK, Look
from lablib.pictures.window import Window

COLUMNS = ("sphere", "cylinder", "axis", "addition", "prism", "base", "PD", "height")
"""The fields of an eye, in their order from the left."""
EYES = ("right", "left")
BELOW = ("frame", "note")
FIELDS = (*(f"{eye} {column}" for eye in EYES for column in COLUMNS), *BELOW)
"""Every field of a ticket by its name: an eye with a column, the frame, the note."""
DOUBTFUL = Look(colour=OKABE_ITO["vermilion"], dashes="solid", width_pt=2.0)
# As many letters as a field of its width takes.
_LONGEST = dict(zip(COLUMNS, (6, 6, 4, 6, 5, 5, 4, 4), strict=True))
_LONGEST_BELOW, _LONGEST_DOUBT = 44, 60
# Left, bottom, right and top of the paper; where the columns begin and end; the lines of the table.
_PAPER_PX = (8.0, 34.0, 472.0, 272.0)
_EDGES_PX = (54.0, 108.0, 168.0, 212.0, 274.0, 322.0, 366.0, 410.0, 466.0)
_ROWS_PX = (240.0, 214.0, 178.0, 142.0)
_TITLE_PX, _HEADS_PX, _FRAME_PX, _NOTE_PX, _UNITS_PX = 256.0, 227.0, 120.0, 88.0, 54.0
_EYE_PX = {"right": 196.0, "left": 160.0}
_BELOW_PX = {"frame": _FRAME_PX, "note": _NOTE_PX}
_NAME_PX, _RING_HIGH_PX, _IN_RING_PX = 16.0, 30.0, 18.0
_BELOW_START_PX, _BELOW_END_PX = 58.0, 420.0
_SHADOW_PX = 2.0
_CLEAR = "nothing is ringed: it can be read in one way only"


@dataclass(frozen=True, slots=True, kw_only=True)
class JobTicket:
    """What stands in the fields of a ticket, letter for letter.

    right, left: texts of the fields of an eye, in the order of `COLUMNS`, empty where nothing is written.
    frame, note: what is written of them.
    doubtful: names of the fields that somebody must be asked about, some of `FIELDS`; none where it is made.
    doubt: the same in words, as they read on after "ringed: ".

    Raises LabError for another count of texts, a text that is too long, or a field that is not there.
    """

    right: tuple[str, ...]
    left: tuple[str, ...]
    frame: str
    note: str = ""
    doubtful: tuple[str, ...] = ()
    doubt: str = ""

    def __post_init__(self) -> None:
        for eye in EYES:
            texts = getattr(self, eye)
            if len(texts) != len(COLUMNS):
                raise LabError(
                    f"{eye} eye of a ticket: {len(texts)} texts: give one for each of {', '.join(COLUMNS)}"
                )
            for column, text in zip(COLUMNS, texts, strict=True):
                _require_short(f"{column} of the {eye} eye", text, _LONGEST[column])
        _require_short("frame", self.frame, _LONGEST_BELOW)
        _require_short("note", self.note, _LONGEST_BELOW)
        _require_short("doubt", self.doubt, _LONGEST_DOUBT)
        for name in self.doubtful:
            require_one_of("doubtful field", name, FIELDS)

    def text(self, field: str) -> str:
        """Return what stands in a field.

        field: its name, one of `FIELDS`.
        """
        if field in BELOW:
            return getattr(self, field)
        eye, column = field.split(" ")
        return getattr(self, eye)[COLUMNS.index(column)]


class Field:
    """One field of the paper: where it lies, its words and its ring.

    picture: the picture it is part of; name: its name.
    """

    def __init__(self, picture: "TicketPicture", name: str) -> None:
        left, right, y = _place(name)
        align = "left" if name in BELOW else "center"
        self.name, self.words = name, words_in(picture.window, ha=align)
        self.words.set_position((left + _IN_RING_PX if name in BELOW else (left + right) / 2.0, y))
        ring = Ellipse(((left + right) / 2.0, y), right - left - 1.0, _RING_HIGH_PX, fill=False, zorder=10)
        ring.set(edgecolor=DOUBTFUL.colour, linewidth=DOUBTFUL.width_pt, clip_on=False)
        self.ring = picture.moving(picture.window.axes.add_patch(ring))

    def show(self, text: str, *, ringed: bool) -> None:
        """Write a text, and ring it or not.

        text: what stands there; ringed: whether it is doubtful, and may be shown to be.
        """
        self.words.set_text(text)
        self.ring.set_visible(ringed)


class TicketPicture(KeptPicture):
    """A ticket as it lies on the bench; nothing on it is ringed before the question is over."""

    width_px = 480
    height_px = 300

    def build(self) -> None:
        """Add the paper with the names of its fields, the fields, and the line below it."""
        left, bottom, *_ = BOX_PX
        # One unit of the window is a shown pixel, counted from the picture's own corner.
        self.window = Window(self, BOX_PX, across_px=-left, up_px=-bottom)
        self._add_paper()
        self.fields = {name: Field(self, name) for name in FIELDS}
        self.verdict: Label = moving_words(self, self.window.axes, (ASIDE_PX, KEY_Y_PX), color=INK)

    def update(self, data: Asked) -> None:
        """Write a ticket, and ring what is doubtful once the question is over.

        data: what to show.

        Raises LabError for values that are no ticket.
        """
        ticket = read_case(JobTicket, data.values)
        for name, field in self.fields.items():
            field.show(ticket.text(name), ringed=data.is_over and name in ticket.doubtful)
        told = f"ringed: {ticket.doubt}" if ticket.doubtful else _CLEAR
        self.verdict.set_text(told if data.is_over else "")

    def _add_paper(self) -> None:
        axes = self.window.axes
        left, bottom, right, top = _PAPER_PX
        size = (right - left, top - bottom)
        axes.add_patch(
            Rectangle((left + _SHADOW_PX, bottom - _SHADOW_PX), *size, facecolor=QUIET_INK, zorder=0)
        )
        axes.add_patch(Rectangle((left, bottom), *size, facecolor=PAPER, edgecolor=INK, zorder=1))
        write_still(self, (ASIDE_PX, HEADING_Y_PX), "An invented ticket, printed", size=HEADING_PT)
        write_still(self, (_NAME_PX, _TITLE_PX), "Job ticket", size=HEADING_PT, weight="bold")
        for (begin, end), name in zip(pairwise(_EDGES_PX), COLUMNS, strict=True):
            write_still(self, ((begin + end) / 2.0, _HEADS_PX), name, color=QUIET_INK, ha="center")
        for name, y in (_EYE_PX | _BELOW_PX).items():
            write_still(self, (_NAME_PX, y), name, color=QUIET_INK)
        units = "powers [D], prism [prism dioptres], axis [degrees], lengths [mm]"
        write_still(self, (_NAME_PX, _UNITS_PX), units, color=QUIET_INK)
        self._add_lines()

    def _add_lines(self) -> None:
        style = {"color": QUIET_INK, "linewidth": 0.7, "zorder": 2}
        for y in _ROWS_PX:
            self.window.axes.plot([_PAPER_PX[0], _PAPER_PX[2]], [y, y], **style)
        for x in _EDGES_PX[:-1]:
            self.window.axes.plot([x, x], [_ROWS_PX[0], _ROWS_PX[-1]], **style)


def _place(name: str) -> tuple[float, float, float]:
    """Return where a field begins and ends, and its height [shown px]."""
    if name in BELOW:
        return _BELOW_START_PX, _BELOW_END_PX, _BELOW_PX[name]
    eye, column = name.split(" ")
    at = COLUMNS.index(column)
    return _EDGES_PX[at], _EDGES_PX[at + 1], _EYE_PX[eye]


def _require_short(thing: str, text: object, most: int) -> None:
    if not isinstance(text, str) or len(text) > most:
        raise LabError(f"{thing} {text!r} does not fit the paper: give a text of {most} letters at most")
