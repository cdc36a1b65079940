"""The demo log: twenty weeks of spoiled lenses in an invented lens room, and how many lenses it cut.

Rooms, jobs, prices and dates are invented; what goes wrong, and who finds it, is common practice.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from importlib import resources
from pathlib import Path

from lablib.bench.spoilage_log import SpoilageLog, read_log
from lablib.datafile import read_table

_WEEK = timedelta(days=7)


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """One week of a lens room.

    first_day: its Monday; lenses: cut in it.
    """

    first_day: date
    lenses: int


@cache
def demo_log() -> SpoilageLog:
    """Return the demo log of spoiled lenses."""
    return read_log(Path(str(resources.files("lablib.job") / "demo_log.csv")))


@cache
def demo_weeks() -> tuple[Week, ...]:
    """Return the weeks of the demo log, one after the other."""
    table = read_table("lablib.job", "demo_log.toml")
    return tuple(
        Week(first_day=table["first_day"] + number * _WEEK, lenses=lenses)
        for number, lenses in enumerate(table["lenses"])
    )
