"""What to mind about one cut beside its margin, in words."""

from collections.abc import Iterator

import numpy as np

from lablib.bench.cut_cautions import CUT_CHECKS
from lablib.bench.grip_cautions import GRIP_CHECKS, Caution, named_tip
from lablib.bench.margin import CutResult
from lablib.bench.parameter import default, table
from lablib.bench.setup import Setup


def cautions(result: CutResult) -> tuple[Caution, ...]:
    """Return what to mind about a cut.

    result: of `work_cut`.
    """
    return tuple(
        caution
        for check in (_clamp, _block, _pad, _tip, *GRIP_CHECKS, _sense, _motor, *CUT_CHECKS)
        for caution in check(result)
    )


def _clamp(result: CutResult) -> Iterator[Caution]:
    held = result.holding
    if held.clamp_force_n > held.clamp_cap_n:
        yield Caution(
            name="clamp-above-cap",
            text=f"clamp force {held.clamp_force_n:.0f} N may craze the coat: this lens bears about "
            f"{held.clamp_cap_n:.0f} N; set that or less",
        )


def _block(result: CutResult) -> Iterator[Caution]:
    if not result.block_clears:
        yield Caution(
            name="block-does-not-clear",
            text=f"the block stands {-result.block_clearance_mm:.1f} mm outside the finished outline and the "
            f"wheel would cut into it: take a smaller block or another blocking point",
        )


def _pad(result: CutResult) -> Iterator[Caution]:
    yield from pad_cautions(result.setup)


def pad_cautions(setup: Setup) -> Iterator[Caution]:
    """Yield what to mind about the pad: too cold to bond, or past its shelf life.

    setup: its age and the temperature.
    """
    if setup.temperature_c < default("coldest_c"):
        yield Caution(
            name="pad-too-cold",
            text=f"at {setup.temperature_c:g} C a pad does not bond properly, whatever its strength: "
            f"bring pad, block and lens to {default('coldest_c'):g} C or more first",
        )
    if setup.pad_age_months > default("shelf_life_months"):
        yield Caution(
            name="pad-past-shelf-life",
            text=f"a pad of {setup.pad_age_months:g} months is past its shelf life of "
            f"{default('shelf_life_months'):g}: take a fresh one",
        )


def _tip(result: CutResult) -> Iterator[Caution]:
    setup = result.setup
    if setup.tip_face_mm is not None:
        yield from named_tip(result)
    elif setup.tip_stiffness == "stiff" and setup.tip_fit not in ("usual", "matched"):
        row = table()["fit"][setup.tip_fit]
        yield Caution(
            name="tip-presses-on-a-spot",
            text=f"a stiff tip that does not fit ({row['words']}) presses with about "
            f"{row['stiff_peak_pressure_mpa']:g} MPa in places at 300 N and may craze the coat: "
            f"take a soft tip or one of the back's curve",
        )


def _sense(result: CutResult) -> Iterator[Caution]:
    cutting = result.cutting
    if result.setup.wheel_sense == "with" and np.any((cutting.arm_mm > 0.0) & (cutting.force_n > 0.0)):
        yield Caution(
            name="wheel-drives-the-lens",
            text="the wheel runs with the lens and at places drives it ahead: a lens that starts to turn "
            "there is snatched round, so the margin holds only up to the first movement",
        )


def _motor(result: CutResult) -> Iterator[Caution]:
    bench = result.bench
    if result.peak_tangential_force_n >= bench.motor_power_w / bench.surface_speed_m_per_s:
        yield Caution(
            name="motor-at-its-limit",
            text=f"the wheel motor is at its limit of {bench.motor_power_w:g} W, so the wheel slows and the "
            f"lens is cut more slowly than planned: take smaller bites or crib",
        )
