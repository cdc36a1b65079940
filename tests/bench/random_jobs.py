"""Random jobs: lens, machine and grip drawn evenly from the ranges of the table; all invented."""

from collections.abc import Callable
from dataclasses import dataclass, fields, replace

import numpy as np
from reference_jobs import lens, superellipse

from lablib.bench.machine import Bench, Coat, LensMaterial, Skin, lens_material, material_names
from lablib.bench.margin import CutResult, work_cut
from lablib.bench.parameter import parameters, table
from lablib.bench.setup import Setup

# Figures of the bench that came after these are drawn last, so that a seed keeps its job.
LAST_AT_FIRST = "doubt"
PLASTICS = [name for name in material_names() if not name.startswith("crown")]


@dataclass(frozen=True, kw_only=True)
class Job:
    """One random job; `margin` works it with single figures replaced."""

    parts: dict
    material: LensMaterial
    bench: Bench

    def result(
        self, parts: dict | None = None, *, material: dict | None = None, **setup: object
    ) -> CutResult:
        chosen = Setup(**({"coat": "slick"} | setup))
        cut = replace(self.material, **(material or {}))
        return work_cut(lens(**(self.parts | (parts or {}))), material=cut, setup=chosen, bench=self.bench)

    def margin(self, parts: dict | None = None, **changed: object) -> float:
        return self.result(parts, **changed).margin


def job(seed: int, *, material: str | None = None) -> Job:
    """Return the random job of a seed: a minus lens of the material, or of a random plastic."""
    draw = np.random.default_rng(seed)

    def within(name: str) -> float:
        return float(draw.uniform(parameters()[name].low, parameters()[name].high))

    def rows(kind: str, make: type) -> dict:
        names = {name: table()[kind][name] for name in table()[kind]}
        return {
            name: make(name=name, **{one: within(f"{kind}.{name}.{one}") for one in row})
            for name, row in names.items()
        }

    material = material or str(draw.choice(PLASTICS))
    return Job(
        parts={
            "power_d": float(draw.uniform(-10.0, -1.0)),
            "index": float(draw.uniform(1.5, 1.74)),
            "centre_mm": float(draw.uniform(1.0, 2.2)),
            "blank_mm": float(draw.uniform(65.0, 80.0)),
            "away_mm": float(draw.uniform(-4.0, 4.0)),
            "outline": superellipse(
                float(draw.uniform(2.0, 3.5)),
                float(draw.uniform(44.0, 54.0)),
                float(draw.uniform(30.0, 42.0)),
            ),
        },
        material=replace(
            lens_material(material),
            **{
                one.name: within(f"material.{material}.{one.name}")
                for one in fields(LensMaterial)
                if one.name != "name"
            },
        ),
        bench=_bench(within, rows),
    )


def _bench(within: Callable[[str], float], rows: Callable[[str, type], dict]) -> Bench:
    figures = [one.name for one in fields(Bench) if one.type is float]
    first = figures[: figures.index(LAST_AT_FIRST) + 1]
    drawn = {name: within(name) for name in first}
    grip = {"coats": rows("coat", Coat), "skins": rows("skin", Skin)}
    wheels = {name: within(f"wheel.{name}.force_factor") for name in table()["wheel"]}
    later = {name: within(name) for name in figures if name not in drawn}
    return Bench(**drawn, **grip, wheels=wheels, **later)
