"""The frame of a ticket file: by boxing numbers and an outline, or by a trace that lies beside the ticket."""

from dataclasses import replace
from pathlib import Path, PurePosixPath, PureWindowsPath

from lablib.errors import LabError
from lablib.job.fields import Fields
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.frame_traces import FrameTraces, traced_frame
from lablib.optics.trace_file import read_traces

# What a trace tells itself.
_TRACED = ("a_mm", "b_mm", "outline")


def read_frame(top: Fields, folder: Path | None) -> Frame | None:
    """Read the frame's table.

    top: the ticket's top table.
    folder: where a trace is looked for; None where the ticket is no file.

    Faults go to the top's list; None where the frame cannot be made.
    """
    fields = top.table("frame", required=True)
    if fields is None:
        return None
    frame = _traced(fields, folder) if "trace" in fields else _boxed(fields)
    fields.done()
    return frame


def _boxed(fields: Fields) -> Frame | None:
    numbers = {key: fields.number(key, required=True) for key in ("a_mm", "b_mm", "dbl_mm")}
    kind, shape, curve = fields.text("kind"), _shape(fields), fields.number("rim_curve_d")
    fields.take("trace")
    if None in numbers.values() or shape is None:
        return None
    with fields.noting():
        return Frame(**numbers, shape=shape, kind=kind, rim_curve_d=curve)
    return None


def _traced(fields: Fields, folder: Path | None) -> Frame | None:
    name, bridge, kind = fields.text("trace"), fields.number("dbl_mm"), fields.text("kind")
    curve = fields.number("rim_curve_d")
    both = [key for key in _TRACED if key in fields]
    for key in _TRACED:
        fields.take(key)
    if both:
        fields.fault(f"trace and {both[0]}: both are there: take {both[0]} away, the trace gives it")
    if both or name is None:
        return None
    with fields.noting():
        return replace(traced_frame(_traces(name, folder), dbl_mm=bridge, kind=kind), rim_curve_d=curve)
    return None


def _traces(name: str, folder: Path | None) -> FrameTraces:
    """The traces a ticket names, from its own folder or one inside it, so that both travel together."""
    if folder is None:
        raise LabError(
            f"trace = {name!r}: this ticket is no file, so nothing lies beside it: give a_mm and b_mm"
        )
    as_anywhere = (PurePosixPath(name), PureWindowsPath(name))
    leads_out = any(path.anchor or ".." in path.parts for path in as_anywhere)
    if leads_out or not name.isprintable() or not name.strip():
        raise LabError(
            f"trace = {name!r} does not lie beside the ticket: lay it in that folder and give its name"
        )
    return read_traces(folder / name, named=name)


def _shape(fields: Fields) -> OutlineShape | None:
    if "outline" not in fields:
        fields.take("outline")
        return OutlineShape()
    given = fields.take("outline")
    with fields.noting():
        if isinstance(given, str):
            return OutlineShape.named(given)
        if not isinstance(given, dict):
            raise LabError(f"outline = {given!r}: give a family's name or a table with a family")
        if given.get("family") == "superellipse" and set(given) <= {"family", "exponent"}:
            return OutlineShape.superellipse(given.get("exponent", OutlineShape().upper_nasal))
        if set(given) == {"family"}:
            return OutlineShape.named(given["family"])
        raise LabError(
            f"outline = {given!r}: give family = a name of the table, or family = "
            f'"superellipse" with an exponent'
        )
    return None
