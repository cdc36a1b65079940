"""Trace files in the open data-exchange standard, read: `LABEL=value;value` on lines of plain text.

What is read of ISO 16284 is written from memory; `trace_format.toml` says what each label is taken to mean.
A file is read up to a bound, and a faulty one gives one error that names the file and the line.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import NoReturn

from lablib.errors import LabError
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame_traces import FrameTraces
from lablib.optics.limits import require_in_limits
from lablib.optics.trace import Trace, require_angle, require_radius, trace_format
from lablib.optics.trace_boxing import Boxing
from lablib.optics.trace_records import BOXING_LABELS, SHOWN, bytes_of, fail, records

_WHOLE, _DECIMAL = re.compile(r"[+-]?[0-9]{1,9}"), re.compile(r"[+-]?[0-9]{1,6}(\.[0-9]{0,6})?")
# What stands for a number that is not known, from memory.
_NOT_KNOWN = ("", "?")
_FIELDS_OF_HEADER = 5


def read_traces(path: Path, *, named: str | None = None) -> FrameTraces:
    """Read a trace file.

    path: of the file; named: how a ticket names it, None for the file's own name.

    Raises LabError, naming the file and the line, for what is no trace file or a faulty one.
    """
    name = (path.name or str(path)) if named is None else named
    return traces_from(bytes_of(path, name=name), name=name)


def traces_from(raw: bytes, *, name: str) -> FrameTraces:
    """Return what the bytes of a trace file hold.

    raw: all of it; name: of the file, for messages and for a ticket.

    Raises LabError, naming the file and the line, for a faulty one.
    """
    reading = _Reading(name=name)
    for line, label, text in records(raw, name=name):
        reading.take(line, label, text)
    return reading.done()


@dataclass(slots=True, kw_only=True)
class _Rim:
    """The trace of one eye while it is read: what its header promises, and what has come so far."""

    line: int
    eye: Eye
    promised: int
    is_equal: bool
    traced: str
    radii: list[int] = field(default_factory=list)
    angles: list[int] = field(default_factory=list)


class _Reading:
    """A trace file while it is read."""

    def __init__(self, *, name: str) -> None:
        self._name, self._last = name, 1
        self._rims: dict[Eye, _Rim] = {}
        self._rim: _Rim | None = None
        self._boxes: dict[str, tuple[int, tuple[float | None, float | None]]] = {}
        self._bridge: float | None = None
        self._job = ""
        self._seen: dict[str, int] = {}
        self._not_read: dict[str, None] = {}

    def _fail(self, line: int, words: str) -> NoReturn:
        fail(self._name, line, words)

    def take(self, line: int, label: str, text: str) -> None:
        """Take one record in."""
        self._last = line
        if label == "TRCFMT":
            self._header(line, text)
        elif label in ("R", "A"):
            self._numbers(line, label, text)
        elif label in (*BOXING_LABELS, "DBL", "JOB"):
            if label in self._seen:
                self._fail(line, f"{label} stands in line {self._seen[label]} already: give it once")
            self._seen[label] = line
            self._stated(line, label, text)
        else:
            self._not_read[label] = None

    def _header(self, line: int, text: str) -> None:
        fields = [one.strip() for one in text.split(";")]
        if len(fields) != _FIELDS_OF_HEADER:
            self._fail(
                line,
                f"TRCFMT has {len(fields)} field(s): give five: format, number of radii, E or U, R or L, F",
            )
        known = trace_format()
        if fields[0] != known["format"]["plain"]:
            self._fail(line, f"format {fields[0][:SHOWN]!r} is not read here: ask the tracer for format 1")
        promised = self._one(line, "number of radii", fields[1])
        self._checked(line, require_in_limits, "trace of a rim with", promised, "trace_radii")
        spacing, eye, traced = (
            self._word(line, kind, given)
            for kind, given in zip(("spacing", "eye", "traced"), fields[2:], strict=True)
        )
        self._begin(
            _Rim(
                line=line,
                eye=Eye(eye),
                promised=promised,
                is_equal=spacing == known["spacing"]["E"],
                traced=traced,
            )
        )

    def _begin(self, rim: _Rim) -> None:
        if (before := self._rims.get(rim.eye)) is not None:
            self._fail(
                rim.line,
                f"the {rim.eye} rim is traced a second time, the first in line {before.line}: keep one, or "
                "mend the eye",
            )
        self._rim = self._rims[rim.eye] = rim

    def _word(self, line: int, kind: str, given: str) -> str:
        known = trace_format()[kind]
        if given not in known:
            meant = ", ".join(f"{letter} ({words})" for letter, words in known.items())
            self._fail(line, f"TRCFMT has {given[:SHOWN]!r} for {kind}: give one of {meant}")
        return known[given]

    def _numbers(self, line: int, label: str, text: str) -> None:
        rim = self._rim
        if rim is None:
            self._fail(line, f"{label} stands before any TRCFMT: a trace begins with its header")
        if label == "A" and rim.is_equal:
            self._fail(line, f"A gives angles, line {rim.line} says equal angles (E): make them agree")
        kept, words = (rim.radii, "radius") if label == "R" else (rim.angles, "angle")
        require = require_radius if label == "R" else require_angle
        for given in text.removesuffix(";").split(";"):
            if len(kept) == rim.promised:
                self._fail(line, f"more than the {rim.promised} of line {rim.line}: {words} too many")
            thing = f"{words} {len(kept) + 1}"
            self._checked(line, require, thing, self._one(line, thing, given.strip()))
            kept.append(int(given))

    def _one(self, line: int, thing: str, given: str) -> int:
        if not _WHOLE.fullmatch(given):
            self._fail(line, f"{thing} {given[:SHOWN]!r} is not a whole number: write figures alone")
        return int(given)

    def _checked(self, line: int, check: Callable[..., object], *given: object, **more: object) -> object:
        try:
            return check(*given, **more)
        except LabError as fault:
            self._fail(line, str(fault))

    def _stated(self, line: int, label: str, text: str) -> None:
        if label == "JOB":
            self._job = text.strip()
            if not self._job.isprintable():
                self._fail(line, f"JOB {self._job[:SHOWN]!r} cannot be printed: write plain characters")
            return
        values = [self._decimal(line, label, one.strip()) for one in text.split(";")]
        if label == "DBL":
            self._bridge = values[0]
            return
        if len(values) > len(EYES):
            self._fail(line, f"{label} has {len(values)} values: give right and left")
        # One value stands for both eyes.
        self._boxes[label] = (line, (values[0], values[-1]))

    def _decimal(self, line: int, label: str, given: str) -> float | None:
        if given in _NOT_KNOWN:
            return None
        if not _DECIMAL.fullmatch(given):
            self._fail(line, f"{label} {given[:SHOWN]!r} is not a number: give millimetres")
        value = float(given)
        if value <= 0.0:
            self._fail(line, f"{label} {given} is not above 0: give millimetres")
        return value

    def done(self) -> FrameTraces:
        """Return what was read, once the file is at its end."""
        if not self._rims:
            self._fail(
                self._last,
                "the file ends here and no TRCFMT stood in it: a trace begins with one; check the name",
            )
        rims = {eye.value: self._finished(rim) for eye, rim in self._rims.items()}
        stated = {f"{eye}_stated": self._boxing(at) for at, eye in enumerate(EYES)}
        return self._checked(
            self._seen.get("DBL", self._last),
            FrameTraces,
            **rims,
            **stated,
            dbl_mm=self._bridge,
            job=self._job,
            not_read=tuple(self._not_read),
            file=self._name,
        )

    def _finished(self, rim: _Rim) -> Trace:
        wanted = ((rim.radii, "radii"),) if rim.is_equal else ((rim.radii, "radii"), (rim.angles, "angles"))
        for found, words in wanted:
            if len(found) != rim.promised:
                self._fail(rim.line, f"TRCFMT promises {rim.promised} {words}, {len(found)} follow")
        return self._checked(
            rim.line,
            Trace,
            eye=rim.eye,
            radii=tuple(rim.radii),
            angles=None if rim.is_equal else tuple(rim.angles),
            traced=rim.traced,
        )

    def _boxing(self, at: int) -> Boxing:
        found = {BOXING_LABELS[label]: values[at] for label, (_, values) in self._boxes.items()}
        line = max((line for line, _ in self._boxes.values()), default=self._last)
        return self._checked(line, Boxing, **found)
