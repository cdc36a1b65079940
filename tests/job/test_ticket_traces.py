"""Tickets whose frame was traced: read from beside the ticket, worked, written, and refused in words."""

import tomllib
from pathlib import Path

import pytest
from tickets import table, ticket_path

from lablib.errors import LabError
from lablib.job.fields import TicketFaults
from lablib.job.report import as_text
from lablib.job.sheet import work
from lablib.job.ticket import Ticket
from lablib.job.ticket_file import ticket_from
from lablib.job.ticket_writing import ticket_text
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.frame_traces import FrameTraces, traced_frame
from lablib.optics.trace import trace_of
from lablib.optics.trace_boxing import Boxing
from lablib.optics.trace_writing import trace_text
from lablib.panels import job_ticket, lens_ticket

SHAPED = Frame(a_mm=52.0, b_mm=40.0, dbl_mm=18.0, shape=OutlineShape.named("panto"))


def traces(eyes: tuple[Eye, ...] = EYES, **more: object) -> FrameTraces:
    """Return the traces of a panto frame's rims."""
    return FrameTraces(**{eye.value: trace_of(SHAPED.outline(eye), eye) for eye in eyes}, **more)


def traced_ticket(folder: Path, found: FrameTraces, *, name: str = "rims.txt", **frame: object) -> Path:
    """Write traces and a ticket that names them, and return the ticket's path."""
    (folder / name).parent.mkdir(exist_ok=True)
    (folder / name).write_bytes(trace_text(found).encode())
    return ticket_path(folder, frame={"trace": name, **frame})


def test_a_traced_frame_is_worked_as_its_outline_is(tmp_path: Path):
    sheet = work(Ticket.read(traced_ticket(tmp_path, traces(), dbl_mm=18.0)))
    drawn = work(ticket_from(table(frame={"a_mm": 52.0, "b_mm": 40.0, "dbl_mm": 18.0, "outline": "panto"})))
    for eye, other in zip(sheet.eyes, drawn.eyes, strict=True):
        assert eye.minimum_blank_mm == pytest.approx(other.minimum_blank_mm, abs=0.03)
        assert eye.finished.volume_mm3 == pytest.approx(other.finished.volume_mm3, rel=1e-3)
        assert eye.in_mm == pytest.approx(other.in_mm, abs=0.006)
    assert sheet.ticket.frame.a_mm == pytest.approx(52.0, abs=0.01)
    assert "18 mm, as traced; effective diameter" in as_text(sheet)
    assert sheet.findings == drawn.findings


def test_the_bridge_may_stand_in_the_trace_alone(tmp_path: Path):
    assert Ticket.read(traced_ticket(tmp_path, traces(dbl_mm=17.0))).frame.dbl_mm == 17.0


def test_a_trace_may_lie_in_a_folder_inside(tmp_path: Path):
    path = traced_ticket(tmp_path, traces(dbl_mm=17.0), name="rims/one.txt")
    assert Ticket.read(path).frame.traces.file == "rims/one.txt"


def test_remarks_on_the_traces_stand_on_the_sheet(tmp_path: Path):
    found = traces((Eye.RIGHT,), dbl_mm=16.0, right_stated=Boxing(a_mm=53.0))
    sheet = work(Ticket.read(traced_ticket(tmp_path, found, dbl_mm=18.0)))
    named = {one.name: one.eye for one in sheet.findings}
    assert named["one-rim-traced"] is Eye.LEFT
    assert named["trace-differs-from-boxing"] is Eye.RIGHT
    assert named["bridge-differs"] is None
    assert "the left outline is its mirror" in as_text(sheet)


def test_a_remark_on_a_rim_without_a_lens_is_not_on_the_sheet(tmp_path: Path):
    path = traced_ticket(tmp_path, traces((Eye.RIGHT,), dbl_mm=18.0))
    path = ticket_path(tmp_path, frame={"trace": "rims.txt"}, left=None)
    assert [one.name for one in work(Ticket.read(path)).findings if one.name == "one-rim-traced"] == []


def test_a_written_ticket_names_its_trace_and_reads_back_as_it_was(tmp_path: Path):
    ticket = Ticket.read(traced_ticket(tmp_path, traces(), dbl_mm=18.0, kind="metal"))
    text = ticket_text(ticket)
    assert tomllib.loads(text)["frame"] == {"trace": "rims.txt", "dbl_mm": 18.0, "kind": "metal"}
    (tmp_path / "again.toml").write_text(text, encoding="utf-8")
    assert Ticket.read(tmp_path / "again.toml") == ticket


def test_traces_that_are_in_no_file_cannot_be_written():
    frame = traced_frame(traces(dbl_mm=18.0))
    good = ticket_from(table())
    with pytest.raises(
        LabError, match="the traces of this frame are in no file: write them to one, and read"
    ):
        ticket_text(Ticket(number="T", frame=frame, right=good.right))


@pytest.mark.parametrize("values_of", [lens_ticket.values_of, job_ticket.values_of])
def test_a_panel_says_that_it_cannot_show_a_trace(values_of, tmp_path: Path):
    ticket = Ticket.read(traced_ticket(tmp_path, traces(), dbl_mm=18.0))
    with pytest.raises(LabError, match="The frame of this ticket was traced, and this panel has no control"):
        values_of(ticket)


@pytest.mark.parametrize(
    ("frame", "line"),
    [
        ({"trace": "none.txt"}, "[frame] none.txt: cannot be opened (no such file or directory): check the"),
        ({"trace": 7}, "[frame] trace = 7 is not text: put it in quotes"),
        ({"trace": "bad.txt"}, "[frame] bad.txt: line 1: 'hello' is no record: write LABEL=value;value"),
        ({"trace": "rims.txt"}, "[frame] dbl_mm is missing and the trace file states no DBL: measure the"),
        ({"trace": "rims.txt", "dbl_mm": 90}, "[frame] dbl_mm 90 is out of range: give from 5 to 40 mm"),
        ({"trace": "rims.txt", "dbl_mm": 18, "kind": "wood"}, "[frame] frame kind 'wood' is not known: give"),
        (
            {"trace": "rims.txt", "outline": "panto"},
            "[frame] trace and outline: both are there: take outline away, the trace gives it",
        ),
        (
            {"trace": "rims.txt", "dbl_mm": 18, "colour": "red"},
            "[frame] colour = 'red': unknown key: give one of a_mm",
        ),
        *(
            (
                {"trace": name},
                f"[frame] trace = {name!r} does not lie beside the ticket: lay it in that folder",
            )
            for name in (
                "../rims.txt",
                "/etc/rims.txt",
                "a/../../b",
                "C:\\rims.txt",
                "..\\rims.txt",
                " ",
                "a\nb",
            )
        ),
    ],
)
def test_a_missing_or_bad_trace_is_a_fault_of_the_ticket(frame: dict, line: str, tmp_path: Path):
    (tmp_path / "rims.txt").write_bytes(trace_text(traces()).encode())
    (tmp_path / "bad.txt").write_text("hello")
    with pytest.raises(TicketFaults) as found:
        Ticket.read(ticket_path(tmp_path, frame=frame))
    assert found.value.faults[0].startswith(f"ticket.toml: {line}")


def test_a_ticket_that_is_no_file_has_no_trace_beside_it():
    with pytest.raises(TicketFaults, match=r"trace = 'rims\.txt': this ticket is no file, so nothing lies"):
        ticket_from(table(frame={"trace": "rims.txt", "dbl_mm": 18.0}))
