"""What a sheet of outlines shows: a frame, where the lenses' centres belong, and what there is to say."""

import textwrap
from dataclasses import dataclass

from lablib.errors import LabError
from lablib.job.demo import file_named
from lablib.job.ticket import Ticket
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.frame_traces import FrameTraces, traced_frame
from lablib.optics.layout import decentration_mm
from lablib.optics.trace_boxing import Boxing
from lablib.optics.trace_file import read_traces
from lablib.working import plain

_TICKET = ".toml"
# The longest line that fits across the narrower sheet, in letters.
_MOST_LETTERS, _MOST_LINES = 120, 3


@dataclass(frozen=True, slots=True, kw_only=True)
class OutlineCase:
    """What is drawn on one sheet.

    title: the job's number, or the file's name.
    frame: whose outlines they are.
    right_mm, left_mm: the centration point inwards and upwards from the boxed centre [mm]; None for none.
    notes: what to know about the outlines, one line each.
    source: where the outlines come from.
    """

    title: str
    frame: Frame
    right_mm: tuple[float, float] | None = None
    left_mm: tuple[float, float] | None = None
    notes: tuple[str, ...] = ()
    source: str = ""

    def centration(self, eye: Eye) -> tuple[float, float] | None:
        """Return the centration point of an eye, inwards and upwards from the boxed centre [mm].

        eye: whose.
        """
        return self.right_mm if eye is Eye.RIGHT else self.left_mm

    def words(self, eye: Eye) -> tuple[str, ...]:
        """Return what stands under an outline: its boxing numbers, and where its centration point lies.

        eye: whose.
        """
        traces = self.frame.traces
        box = Boxing(a_mm=self.frame.a_mm, b_mm=self.frame.b_mm) if traces is None else traces.boxing(eye)
        diameter = self.frame.outline(eye).effective_diameter_mm
        first = (f"{eye} lens", f"A {box.a_mm:.2f}, B {box.b_mm:.2f}, ED {diameter:.1f} mm")
        point = self.centration(eye)
        if point is None:
            return (*first, "no centration point given")
        across, upright = (
            f"{plain(abs(value), 1)} mm {words[value < 0.0]}"
            for value, words in zip(point, (("in", "out"), ("up", "down")), strict=True)
        )
        return (*first, f"centration point {across}, {upright}")


def case_of_ticket(ticket: Ticket) -> OutlineCase:
    """Return what the sheet of a ticket shows.

    ticket: the job.

    Raises LabError for a centration point outside the lens.
    """
    points = {
        f"{order.eye}_mm": decentration_mm(
            ticket.frame, monocular_pd_mm=order.monocular_pd_mm, height_mm=order.height_mm
        )
        for order in ticket.eyes
    }
    source = "Outlines of a shape of our own, fitted to A and B: they are no frame that can be bought."
    return OutlineCase(
        title=ticket.number,
        frame=ticket.frame,
        **points,
        notes=_notes(ticket.frame),
        source=source if ticket.frame.traces is None else _traced(ticket.frame.traces),
    )


def case_of_traces(traces: FrameTraces) -> OutlineCase:
    """Return what the sheet of a trace file shows: outlines and boxed centres, and no centration point.

    traces: of one rim or both.

    Raises LabError for traces that state no bridge, or make no frame.
    """
    if traces.dbl_mm is None:
        raise LabError(
            f"{traces.file}: states no DBL, so it is not known how far apart the lenses lie: add a DBL "
            "record, or name the trace in a ticket that gives dbl_mm"
        )
    frame = traced_frame(traces)
    return OutlineCase(
        title=traces.job or traces.file, frame=frame, notes=_notes(frame), source=_traced(traces)
    )


def _notes(frame: Frame) -> tuple[str, ...]:
    remarks = () if frame.traces is None else frame.traces.remarks(dbl_mm=frame.dbl_mm)
    lines = [f"Note: {one.eye.value + ' eye: ' if one.eye else ''}{one.text}." for one in remarks]
    found = [textwrap.wrap(line, _MOST_LETTERS) for line in lines]
    if sum(map(len, found)) > _MOST_LINES:
        # More would run into the outlines.
        return (
            *found[0],
            f"Note: {len(found) - 1} further remarks on the traces; measure the frame by hand.",
        )
    return tuple(part for lines in found for part in lines)


def _traced(traces: FrameTraces) -> str:
    return f"Outlines as traced, from {traces.file}; what its records mean is taken from memory (ISO 16284)."


def read_case(name: str) -> OutlineCase:
    """Return what the sheet of a file shows: of a ticket, of a demo ticket by its bare name, or of a trace.

    name: path of a ticket file or a trace file; a bare word that is no file names a demo ticket.

    Raises LabError for a file that cannot be read, or makes no sheet.
    """
    path = file_named(name)
    if path.suffix.lower() == _TICKET:
        ticket = Ticket.read(path)
        try:
            return case_of_ticket(ticket)
        except LabError as fault:
            raise LabError(f"{path.name}: {fault}") from None
    return case_of_traces(read_traces(path))
