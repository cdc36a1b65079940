"""Ticket files: TOML in, a `Ticket` out, or every fault at once."""

import tomllib
from pathlib import Path

from lablib.errors import LabError
from lablib.job.fields import Fields, TicketFaults
from lablib.job.ticket import Blocking, Cut, Ticket, Wearer
from lablib.job.ticket_eye import read_eye
from lablib.job.ticket_frame import read_frame
from lablib.optics.eye import Eye

FORMAT = 1
_LARGEST_BYTES = 16_384
_BLOCKING_NUMBERS = (
    "pad_age_months",
    "temperature_c",
    "clamp_force_n",
    "film_wrinkle",
    "key_play_mm",
    "block_curve_d",
    "tip_face_mm",
)
_BLOCKING_WORDS = ("blocking_point", "block", "skin", "grip_layer", "block_face", "tip_stiffness")

_CUT_NUMBERS = (
    "crib_allowance_mm",
    "depth_per_turn_mm",
    "head_force_n",
    "torque_cap_nmm",
    "lens_speed_rpm",
)


def read_ticket(path: Path) -> Ticket:
    """Read a ticket file.

    path: of a TOML file in format 1.

    Raises TicketFaults, with one line for each fault, when the ticket cannot be read.
    """
    name = path.name or str(path)
    try:
        return ticket_from(_toml(path), folder=path.parent)
    except TicketFaults as found:
        raise TicketFaults([f"{name}: {line}" for line in found.faults]) from None
    except LabError as fault:
        raise TicketFaults([f"{name}: {fault}"]) from None


def _toml(path: Path) -> dict:
    try:
        with path.open("rb") as file:
            raw = file.read(_LARGEST_BYTES + 1)
        if len(raw) > _LARGEST_BYTES:
            raise LabError(f"larger than {_LARGEST_BYTES} bytes: a ticket is short: check the name")
        return tomllib.loads(raw.decode("utf-8-sig"))
    except OSError as fault:
        reason = fault.strerror or str(fault)
        raise LabError(f"cannot be opened ({reason.lower()}): check the name and the folder") from None
    except UnicodeDecodeError:
        raise LabError("not a text file in UTF-8: save it as plain text") from None
    except (ValueError, RecursionError) as fault:
        # Not only the reader's own error: a whole number of thousands of figures is a plain ValueError.
        raise LabError(f"not TOML ({str(fault) or 'nested too deep'}): mend that line") from None


def ticket_from(table: dict, *, folder: Path | None = None) -> Ticket:
    """Return the ticket that a table of plain values describes.

    table: as a TOML reader gives it.
    folder: where a frame trace is looked for; None where the ticket is no file.

    Raises TicketFaults, with one line for each fault.
    """
    faults: list[str] = []
    top = Fields(table, where="", faults=faults)
    if (found := top.take("format")) != FORMAT or isinstance(found, bool):
        top.fault(f"format = {found!r}: this workbook reads format {FORMAT}: write format = {FORMAT}")
    number, note = (_one_line(top, key, required=key == "number") for key in ("number", "note"))
    frame, wearer = read_frame(top, folder), _wearer(top)
    lens = top.take("lens", {})
    blocking, cut = _blocking(top), _cut(top)
    right, left = (read_eye(top, eye, lens) for eye in Eye)
    top.done()
    parts = {"number": number, "frame": frame, "wearer": wearer, "blocking": blocking, "cut": cut}
    if not faults:
        with top.noting():
            return Ticket(**parts, right=right, left=left, note=note or "")
    # A fault in the shared [lens] is met once for each eye.
    raise TicketFaults(list(dict.fromkeys(faults)))


def _one_line(top: Fields, key: str, *, required: bool) -> str | None:
    """A text that is printed on the sheet as it stands, so it must print."""
    text = top.text(key, required=required)
    if text is not None and (not text.isprintable() or (required and not text.strip())):
        top.fault(f"{key} = {text!r} cannot be printed on one line: write it in plain characters")
    return text


def _wearer(top: Fields) -> Wearer | None:
    if (fields := top.table("wearer")) is None:
        return Wearer()
    keys = ("vertex_distance_mm", "tested_vertex_distance_mm")
    numbers = {key: fields.number(key) for key in keys}
    fields.done()
    with fields.noting():
        return Wearer(**numbers)
    return None


def _blocking(top: Fields) -> Blocking | None:
    if (fields := top.table("blocking")) is None:
        return Blocking()
    given = {key: fields.number(key) for key in _BLOCKING_NUMBERS}
    given |= {key: fields.text(key) for key in _BLOCKING_WORDS}
    given |= {key: fields.take(key) for key in ("film", "back_tape", "tip_swivels")}
    fields.done()
    with fields.noting():
        return Blocking(**{key: value for key, value in given.items() if value is not None})
    return None


def _cut(top: Fields) -> Cut | None:
    if (fields := top.table("cut")) is None:
        return Cut()
    given = {key: fields.number(key) for key in _CUT_NUMBERS}
    given |= {key: fields.text(key) for key in ("wheel", "feed", "water")}
    fields.done()
    with fields.noting():
        return Cut(**{key: value for key, value in given.items() if value is not None})
    return None
