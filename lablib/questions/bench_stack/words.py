"""A setup on the bench in words, as the questions about stacks tell it, and what holds it."""

from functools import cache

from lablib.bench.holding import Holding, holding
from lablib.bench.machine import Bench
from lablib.bench.setup import Setup

BENCH = Bench()
# Kept together where a line ends.
NEWTON_METRES = "N\N{NO-BREAK SPACE}m"
CAUTION = "At the bench no lens is blocked with a fingerprint or oil on it: clean it first."
NMM_PER_NM = 1000.0
# Thick enough to bear the usual clamp force, so that no question has to speak of the clamp.
CENTRE_MM = 2.0
_COATS = {"uncoated": "uncoated", "coated": "ordinary coat", "slick": "slick coat"}
_WITH = {"uncoated": "no coat", "coated": "an ordinary coat", "slick": "a slick coat"}
_SKINS = {"clean": "clean", "fingerprint": "fingerprint", "oily": "oil"}


@cache
def held(setup: Setup) -> Holding:
    """Return what holds a setup on the bench with the workbook's defaults.

    setup: what is chosen; kept, because the questions draw from few of them.
    """
    return holding(setup, centre_thickness_mm=CENTRE_MM, bench=BENCH)


def pad_words(setup: Setup) -> str:
    """Return the pad with its age: "pad of 6 months"."""
    return f"pad of {setup.pad_age_months:g} months" if setup.pad_age_months else "new pad"


def lens_words(setup: Setup) -> str:
    """Return the lens as it comes to the pad, inside a sentence: "a lens with a slick coat and oil on it"."""
    coat = _WITH[setup.coat]
    if setup.skin == "clean":
        return f"a clean lens with {coat}"
    lying = "oil" if setup.skin == "oily" else "a fingerprint"
    return f"a lens with {coat} and {lying} on it"


def stack_words(setup: Setup) -> str:
    """Return a stack in one line: "Slick coat, clean, film, new pad"."""
    film = "film" if setup.film else "no film"
    return f"{_COATS[setup.coat]}, {_SKINS[setup.skin]}, {film}, {pad_words(setup)}".capitalize()
