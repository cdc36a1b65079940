"""The log of spoiled lenses: one row each, in a CSV file, and what it says about causes and money.

A bad row is named with its line and kept out; the good rows stay.
"""

import csv
import io
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from lablib.bench.spoilage import SpoiledLens
from lablib.errors import LabError

COLUMNS = (
    "date",
    "job",
    "lens",
    "cause",
    "station",
    "found_by",
    "lens_price",
    "labour_min",
    "hourly_rate",
    "delivery",
)
LENSES = ("right", "left")
# A log is kept by hand; a file larger than this is another file.
_MOST_BYTES = 5_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class LogRow:
    """One spoiled lens.

    day: when it was found.
    job: its number; lens: "right" or "left".
    cause: what went wrong, in the lab's own words.
    station: where it should have been caught; found_by: what found it. Stations are named, not people.
    spoiled: what it costs.
    """

    day: date
    job: str
    lens: str
    cause: str
    station: str
    found_by: str
    spoiled: SpoiledLens


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """All spoiled lenses of one cause.

    name: the cause; count: lenses; cost: of all of them [money].
    """

    name: str
    count: int
    cost: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SpoilageLog:
    """A log as it was read.

    rows: the good rows, in the file's order.
    faults: a line for each bad row, with its line in the file.
    """

    rows: tuple[LogRow, ...]
    faults: tuple[str, ...]

    @property
    def cost(self) -> float:
        """Of all good rows [money]."""
        return sum(row.spoiled.cost for row in self.rows)

    def causes(self) -> tuple[Cause, ...]:
        """Return the causes, the dearest first: a rare cause may cost more than a frequent one."""
        names = dict.fromkeys(row.cause for row in self.rows)
        found = [
            Cause(
                name=name,
                count=sum(row.cause == name for row in self.rows),
                cost=sum(row.spoiled.cost for row in self.rows if row.cause == name),
            )
            for name in names
        ]
        return tuple(sorted(found, key=lambda cause: (-cause.cost, cause.name)))

    def counts(self, days: Iterable[date]) -> tuple[int, ...]:
        """Return how many lenses were spoiled in each batch, for a chart.

        days: the first day of each batch, rising; a batch ends where the next begins.
        """
        firsts = list(days)
        ends = [*firsts[1:], date.max]
        return tuple(
            sum(first <= row.day < end for row in self.rows) for first, end in zip(firsts, ends, strict=True)
        )


def read_log(path: Path) -> SpoilageLog:
    """Read a log.

    path: of a CSV file in UTF-8 whose first line names the columns of `COLUMNS`, in any order; others
        are passed over.

    Raises LabError for a file that cannot be read, is too large, or lacks a column. A bad row is no error: it
    is told in `faults`.
    """
    return parse_log(_text_of(path), name=path.name)


def _text_of(path: Path) -> str:
    try:
        with path.open("rb") as file:
            content = file.read(_MOST_BYTES + 1)
    except OSError as fault:
        raise LabError(
            f"log {path.name} cannot be read ({fault.strerror}): give a CSV file that is there"
        ) from None
    if len(content) > _MOST_BYTES:
        raise LabError(f"log {path.name} is over {_MOST_BYTES // 1_000_000} MB: that is no log kept by hand")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        line = content[: fault.start].count(b"\n") + 1
        raise LabError(f"log {path.name}, line {line}: not UTF-8 text: save it as CSV in UTF-8") from None


def parse_log(text: str, *, name: str = "log") -> SpoilageLog:
    """Read a log from its text.

    text: as in `read_log`; name: of the file, for messages.

    Raises LabError for a missing column, and for a cell too long to be read.
    """
    reader = csv.DictReader(io.StringIO(text.replace("\0", "\N{REPLACEMENT CHARACTER}"), newline=""))
    try:
        return _read_rows(reader, name)
    except csv.Error as fault:
        raise LabError(
            f"log {name}, after line {reader.line_num}: {fault}: look for a quotation mark that is not closed"
        ) from None


def _read_rows(reader: csv.DictReader, name: str) -> SpoilageLog:
    missing = [column for column in COLUMNS if column not in (reader.fieldnames or ())]
    if missing:
        raise LabError(
            f"log {name}, line 1: no column {', '.join(missing)}: the first line names the columns"
        )
    rows, faults = [], []
    for cells in reader:
        try:
            rows.append(_row(cells))
        except LabError as fault:
            faults.append(f"{name}, line {reader.line_num}: {fault}")
    return SpoilageLog(rows=tuple(rows), faults=tuple(faults))


def _row(cells: dict) -> LogRow:
    if None in cells:
        raise LabError("more cells than columns: a comma inside a cell needs the cell in quotes")
    written = {column: (cells[column] or "").strip() for column in COLUMNS}
    # An open quotation mark swallows the rows below it: silence would lose them.
    if any(len(cell.splitlines()) > 1 for cell in written.values()):
        raise LabError("a cell runs over several lines: close its quotation mark, rows are lost in it")
    for column in ("job", "cause", "station", "found_by"):
        if not written[column]:
            raise LabError(f'{column} is empty: write what is known, or "unknown"')
    if written["lens"] not in LENSES:
        raise LabError(f"lens {written['lens']!r} is neither right nor left: give one of the two")
    return LogRow(
        day=_day(written["date"]),
        job=written["job"],
        lens=written["lens"],
        cause=written["cause"].lower(),
        station=written["station"],
        found_by=written["found_by"],
        spoiled=SpoiledLens(
            **{
                key: _number(key, written[key])
                for key in ("lens_price", "labour_min", "hourly_rate", "delivery")
            }
        ),
    )


def _day(written: str) -> date:
    try:
        return date.fromisoformat(written)
    except ValueError:
        raise LabError(f"date {written!r} is no day: give it as 2026-03-27") from None


def _number(column: str, written: str) -> float:
    try:
        return float(written)
    except ValueError:
        raise LabError(f"{column} {written!r} is no number: give it as 12.50, 0 for nothing") from None
