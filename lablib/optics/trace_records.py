"""The records of a trace file: bounded bytes in, `LABEL=value;value` with its line number out."""

import codecs
import re
from collections.abc import Iterator
from pathlib import Path
from typing import NoReturn

from lablib.errors import LabError
from lablib.optics.trace import trace_format

_RECORD = re.compile(r"([A-Z_][A-Z0-9_]{0,15})=(.*)")
# Labels of the boxing numbers, and the fields of `trace_boxing.Boxing` that they fill.
BOXING_LABELS = {
    "HBOX": "a_mm",
    "VBOX": "b_mm",
    "FED": "effective_diameter_mm",
    "CIRC": "circumference_mm",
}
# As much of what was found as a message repeats.
SHOWN = 40


def bytes_of(path: Path, *, name: str) -> bytes:
    """Return all of a trace file.

    path: of the file; name: of it in messages.

    Raises LabError for one that cannot be opened, is no file, or is larger than any trace.
    """
    most = trace_format()["bounds"]["most_bytes"]
    try:
        # A pipe would be waited for without an end.
        if path.exists() and not path.is_file():
            raise LabError(f"{name}: not a file: give the name of a frame trace")
        with path.open("rb") as file:
            raw = file.read(most + 1)
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        raise LabError(f"{name}: cannot be opened ({reason}): check the name and the folder") from None
    if len(raw) > most:
        raise LabError(f"{name}: larger than {most} bytes: a frame trace is short: check the name")
    return raw


def records(raw: bytes, *, name: str) -> Iterator[tuple[int, str, str]]:
    """Yield every record: the number of its line, its label, and the text behind the equals sign.

    raw: all of a file; name: of it in messages. Lines end as on any machine; empty ones, and the mark that
        some editors put before a text, are passed over.

    Raises LabError, naming the line, for one that is too long, is no text, or is no record.
    """
    longest = trace_format()["bounds"]["longest_line"]
    for number, one in enumerate(raw.removeprefix(codecs.BOM_UTF8).splitlines(), start=1):
        # Any byte from 128 on is a letter here, so that a name in another script does no harm.
        line = one.decode("latin-1")
        if len(line) > longest:
            fail(name, number, f"{len(line)} characters long, {longest} at most: begin a further R record")
        if any(ord(letter) < ord(" ") and letter != "\t" for letter in line):
            fail(name, number, "a byte that is no text: a frame trace is plain text; check the name")
        if not line.strip():
            continue
        if (found := _RECORD.fullmatch(line.strip())) is None:
            fail(name, number, f"{line.strip()[:SHOWN]!r} is no record: write LABEL=value;value")
        yield number, found[1], found[2]


def fail(name: str, line: int, words: str) -> NoReturn:
    """Raise the error of a trace file.

    name: of the file; line: where; words: the value, the rule and the next step.

    Raises LabError.
    """
    raise LabError(f"{name}: line {line}: {words}") from None
