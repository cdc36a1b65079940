"""A bench's own numbers in place of the table's: measured here, each with its error, when, and how.

The file is TOML and is written by hand or from fits:

    format = 1
    bench = "corner bench"
    date = 2026-03-27

    [measured."coat.slick.pad_friction"]
    value = 0.21
    error = 0.01
    readings = 12
    how = "break-loose jig, round block"
"""

import tomllib
from collections.abc import Mapping
from dataclasses import asdict, dataclass, fields, replace
from datetime import date
from pathlib import Path

import tomli_w

from lablib.bench.cutting_fit import CuttingFit
from lablib.bench.fitted import Fitted
from lablib.bench.grip_fit import GripFit
from lablib.bench.joints import gripped_coat
from lablib.bench.machine import Bench, LensMaterial
from lablib.bench.parameter import parameters
from lablib.bench.setup import Setup
from lablib.errors import LabError, require_between, require_finite, require_one_of

FORMAT = 1
_ROWS = ("coat", "skin", "wheel", "material")
_MOST_BYTES = 200_000
_FIGURES = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One number measured at a bench.

    value, error: and its standard error, in the table's unit.
    readings: how many it rests on.
    how: in words.

    Raises LabError for a value that is no number, an error below 0, no readings, or no words.
    """

    value: float
    error: float
    readings: int
    how: str

    def __post_init__(self) -> None:
        require_finite("value", self.value)
        require_between("error", self.error, low=0.0, high=1e6)
        require_between("readings", self.readings, low=1, high=1e6)
        if not isinstance(self.how, str) or not self.how.strip():
            raise LabError("how is empty: say in a few words how it was measured")


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchProfile:
    """What was measured at one bench.

    bench: its name; day: of the last measurement.
    measured: by the names of `lablib.bench.parameter.parameters`.

    Raises LabError for a bench without a name, nothing measured, a number the table does not know, or one
    outside its range: its name, the value, the range, and to measure again.
    """

    bench: str
    day: date
    measured: Mapping[str, Measured]

    def __post_init__(self) -> None:
        if not self.bench.strip():
            raise LabError(
                "bench is empty: name the bench, so that a sheet can say whose numbers it rests on"
            )
        if not self.measured:
            raise LabError(
                'nothing was measured: give a table [measured."..."] for each number, or use no profile'
            )
        for name, one in self.measured.items():
            require_one_of("measured number", name, _replaceable())
            try:
                parameters()[name].require(one.value)
            except LabError as fault:
                raise LabError(
                    f"{name}: {fault}; look for another coat, block or unit, and measure again"
                ) from None

    def on(self, bench: Bench) -> Bench:
        """Return a bench with what was measured in place of its own numbers.

        bench: for example `Bench()`.
        """
        plain = {name: one.value for name, one in self.measured.items() if "." not in name}
        rows: dict[str, dict] = {kind: {} for kind in ("coat", "skin", "wheel")}
        for name, one in self.measured.items():
            row, _, own = name.rpartition(".")
            kind, _, choice = row.partition(".")
            if kind in rows:
                rows[kind].setdefault(choice, {})[own] = one.value
        coats = {name: replace(bench.coats[name], **new) for name, new in rows["coat"].items()}
        skins = {name: replace(bench.skins[name], **new) for name, new in rows["skin"].items()}
        wheels = {name: new["force_factor"] for name, new in rows["wheel"].items()}
        return replace(
            bench,
            **plain,
            coats=dict(bench.coats) | coats,
            skins=dict(bench.skins) | skins,
            wheels=dict(bench.wheels) | wheels,
        )

    def cuts(self, material: LensMaterial) -> LensMaterial:
        """Return how a material cuts on this bench.

        material: as in the table; its depth of a bite is set at the machine and stays.
        """
        start = f"material.{material.name}."
        own = {name: one.value for name, one in self.measured.items() if name.startswith(start)}
        return replace(material, **{name.removeprefix(start): value for name, value in own.items()})

    def covers(self, setup: Setup, material: LensMaterial) -> bool:
        """Return whether what decides this cut was measured here: the pad on this surface, and the cutting.

        setup: of the cut; material: of the lens. Only then does the threefold doubt fall away.
        """
        coat = gripped_coat(setup, Bench()).name
        grip = ("film_coat_shear_factor", "film_coat_friction", "core_shear_mpa") if setup.film else ()
        grip = grip or (f"coat.{coat}.pad_shear_factor", f"coat.{coat}.pad_friction")
        needed = (*grip, f"material.{material.name}.specific_energy_j_per_mm3")
        return all(name in self.measured for name in needed)

    def bench_for(self, setup: Setup, material: LensMaterial) -> Bench:
        """Return the bench for one cut, without the doubt about parameters where it is covered.

        setup, material: as in `covers`.
        """
        bench = self.on(Bench())
        return replace(bench, doubt=1.0) if self.covers(setup, material) else bench

    def text(self) -> str:
        """Return the profile as the text of its file."""
        return tomli_w.dumps(
            {
                "format": FORMAT,
                "bench": self.bench,
                "date": self.day,
                "measured": {name: asdict(one) for name, one in self.measured.items()},
            }
        )


def _replaceable() -> tuple[str, ...]:
    """What a profile may replace: numbers of the bench and of its rows, not what is chosen for each lens."""
    own = {one.name for one in fields(Bench)} - {"doubt"}
    return tuple(name for name in parameters() if name in own or name.partition(".")[0] in _ROWS)


def read_profile(path: Path) -> BenchProfile:
    """Read a profile.

    path: of its TOML file.

    Raises LabError, naming the file, for what cannot be read, a key missing or not known, and every value
    that cannot be.
    """
    try:
        with path.open("rb") as file:
            content = file.read(_MOST_BYTES + 1)
        if len(content) > _MOST_BYTES:
            raise LabError(f"over {_MOST_BYTES // 1000} kB: that is no bench profile")
        return _profile(tomllib.loads(content.decode("utf-8")))
    except OSError as fault:
        raise LabError(f"bench profile {path.name} cannot be read ({fault.strerror}): name a file") from None
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as fault:
        raise LabError(f"bench profile {path.name} is not TOML ({fault}): correct it there") from None
    except LabError as fault:
        raise LabError(f"bench profile {path.name}: {fault}") from None


def _profile(table: dict) -> BenchProfile:
    _require_keys("", table, ("format", "bench", "date", "measured"))
    if table["format"] != FORMAT:
        raise LabError(f"format {table['format']!r} is not known: this workbook reads {FORMAT}")
    # A TOML time is a date to Python as well.
    if type(table["date"]) is not date:
        raise LabError(
            f"date {str(table['date'])!r} is no day: give it as 2026-03-27, without quotes or a time"
        )
    if not isinstance(table["bench"], str) or not isinstance(table["measured"], dict):
        raise LabError('bench is a name in quotes, and [measured."..."] a table for each number')
    measured = {}
    for name, row in table["measured"].items():
        if isinstance(row, dict) and any(isinstance(one, dict) for one in row.values()):
            raise LabError(
                f"[measured.{name}] is split at its points: write the whole name in quotes, as "
                f'[measured."coat.slick.pad_friction"]'
            )
        _require_keys(f"[measured.{name}]", row, tuple(one.name for one in fields(Measured)))
        try:
            measured[name] = Measured(**row)
        except LabError as fault:
            raise LabError(f"[measured.{name}] {fault}") from None
    return BenchProfile(bench=table["bench"], day=table["date"], measured=measured)


def _require_keys(where: str, table: object, keys: tuple[str, ...]) -> None:
    found = set(table) if isinstance(table, dict) else set()
    for words, wrong in (("is missing", set(keys) - found), ("is not known", found - set(keys))):
        if wrong:
            key = sorted(wrong)[0]
            raise LabError(f"{where} {key} {words}: there are {', '.join(keys)}".strip())


def measured_grip(fit: GripFit, *, how: str) -> dict[str, Measured]:
    """Return what a grip fit puts into a profile: friction and share of the pad's shear strength on its coat.

    fit: of break-loose readings without a film; how: in words.
    """
    coat, readings = fit.used[0].coat, len(fit.used)
    whole = parameters()["pad_shear_mpa"].default
    share = Fitted(value=fit.shear_mpa.value / whole, error=fit.shear_mpa.error / whole)
    return {
        f"coat.{coat}.pad_shear_factor": _measured(share, readings, how),
        f"coat.{coat}.pad_friction": _measured(fit.friction, readings, how),
    }


def measured_cutting(fit: CuttingFit, material: str, *, how: str) -> dict[str, Measured]:
    """Return what a cutting fit puts into a profile: the material's cutting energy, and the rubbing.

    fit: of weighings; material: a name of the table; how: in words.
    """
    energy = fit.specific_energy_j_per_mm3
    return {
        f"material.{material}.specific_energy_j_per_mm3": _measured(energy, fit.weighings, how),
        "rubbing_n_per_mm": _measured(fit.rubbing_n_per_mm, fit.weighings, how),
    }


def _measured(one: Fitted, readings: int, how: str) -> Measured:
    """To six figures: more than any gauge gives, and a line of the file can still be read."""
    value, error = (float(f"{number:.{_FIGURES}g}") for number in (one.value, one.error))
    return Measured(value=value, error=error, readings=readings, how=how)
