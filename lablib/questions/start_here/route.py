"""The stations of a job's route, as the questions of the first lesson show them."""

from collections.abc import Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """One station of the route.

    key: its stable name.
    place: which station it is, from 1.
    words: the station, as it is put in order.
    inspected: whether the job is inspected there.
    moment: when it is, told without saying so; empty where it could be taken for either.
    noun: the station inside a sentence.
    reason: what only this look finds, or what happens there instead of a look.
    """

    key: str
    place: int
    words: str
    inspected: bool
    moment: str = ""
    noun: str = ""
    reason: str = ""


@cache
def stations() -> dict[str, Station]:
    """Return the stations of the route by key, in their order."""
    rows = read_table("lablib.questions.start_here", "stations.toml")["station"]
    found = [Station(key=key, **row) for key, row in rows.items()]
    return {one.key: one for one in sorted(found, key=lambda one: one.place)}


def in_route_order(keys: Set[str]) -> tuple[str, ...]:
    """Return the keys of stations in the order of the route.

    keys: of `stations`.
    """
    return tuple(key for key in stations() if key in keys)


@dataclass(frozen=True, slots=True, kw_only=True)
class RouteCase:
    """Some stations of the route.

    shown: their keys, in the order in which they are shown.
    """

    shown: tuple[str, ...]
