"""What to mind about how a lens is cut: wet or dry, the kind of wheel, and a feed that does not yield."""

from collections.abc import Iterator

from lablib.bench.grip_cautions import Caution
from lablib.bench.margin import CutResult


def _water(result: CutResult) -> Iterator[Caution]:
    made_for, water = result.material.roughed, result.setup.water
    if water in ("manual", made_for):
        return
    why = (
        "warm swarf smears, loads the wheel and may scorch the rim"
        if water == "dry"
        else "cold swarf packs the wheel, and the force goes up"
    )
    yield Caution(
        name="roughed-against-the-manual",
        text=f"{result.material.name} is made to be roughed {made_for} and is roughed {water} here: {why}; "
        f"rough it {made_for} and finish it wet, as the machine's manual says",
    )


def _wheel(result: CutResult) -> Iterator[Caution]:
    needed, there = result.material.wheel_kind, result.setup.wheel_for
    if there not in ("material", needed):
        yield Caution(
            name="wheel-for-another-material",
            text=f"{result.material.name} on a wheel for {there}: glass never goes on one for plastics, nor "
            f"plastics on one for glass; change the wheel, the figures here are for one for {needed}",
        )


def _head(result: CutResult) -> Iterator[Caution]:
    if result.setup.feed == "head force" and result.margin < 1.0:
        yield Caution(
            name="head-force-does-not-yield",
            text="under constant head force a lens that slips is not relieved: it stops under the wheel and "
            "is ground on one side; stop the machine at once, and cure the margin first",
        )


CUT_CHECKS = (_water, _wheel, _head)
