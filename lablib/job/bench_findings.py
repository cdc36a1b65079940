"""What the bench finds on one lens: cautions of the cut, and a margin under the bound with what helps."""

from collections.abc import Iterator

from lablib.bench.cautions import cautions
from lablib.bench.margin import CutResult
from lablib.bench.parameter import parameters
from lablib.job.eye_sheet import EyeSheet
from lablib.job.finding import Finding, threshold

_COAT_JOINT = "pad to coat"


def bench_findings(sheet: EyeSheet) -> list[Finding]:
    """Return what the bench finds on one lens that is not held.

    sheet: the lens, worked.
    """
    if sheet.order.lens.material.cuts_like is None:
        return [_cutting_not_known(sheet)]
    if sheet.cut is None:
        return []
    found = [Finding(name=one.name, eye=sheet.eye, text=one.text) for one in cautions(sheet.cut)]
    for name, words, cut in (
        ("margin-below-bound", "the cut", sheet.cut),
        ("crib-margin-below-bound", "cribbing", sheet.cut.crib),
    ):
        if cut is not None and cut.slip_probability > threshold("slip_probability"):
            found.append(Finding(name=name, eye=sheet.eye, text=_margin_words(sheet, words, cut)))
    return found


def _cutting_not_known(sheet: EyeSheet) -> Finding:
    return Finding(
        name="cutting-not-known",
        eye=sheet.eye,
        text="how this material cuts is not known, so there are no bench figures: "
        "add cuts_like with the name of a material of the table that cuts like it",
    )


def _margin_words(sheet: EyeSheet, words: str, cut: CutResult) -> str:
    helps = list(_helps(sheet, cut))
    listed = f"{', '.join(helps[:-1])} or {helps[-1]}" if len(helps) > 1 else "".join(helps)
    advice = f"{listed} would help" if helps else "only another lens or frame would help"
    return (
        f"the margin of {words} is {cut.margin:.2f}; on a bench that is not calibrated the estimate leaves "
        f"a chance of {100 * cut.slip_probability:.0f} % that the lens turns on its block, and the bound is "
        f"{100 * threshold('slip_probability'):.0f} %; the weakest joint is {cut.weakest_interface}; "
        f"{advice}; more clamp force is no remedy"
    )


def _helps(sheet: EyeSheet, cut: CutResult) -> Iterator[str]:
    """What is left to change, the cheapest first; each raises the margin by the model's own ordering."""
    setup, material = cut.setup, cut.material
    if setup.skin != "clean":
        yield "a clean lens"
    if setup.wheel != "sharp":
        yield "a dressed wheel"
    if setup.pad_age_months > 0.0:
        yield "a fresh pad"
    if setup.block == "half-eye":
        yield "a round block where it clears"
    # A film takes the coat's joint out of the stack and does nothing for the others.
    if not setup.film and cut.weakest_interface == _COAT_JOINT:
        yield "a film"
    if not setup.back_tape:
        yield "a tape on the back"
    least_depth = parameters()[f"material.{material.name}.depth_per_turn_mm"].low
    if material.depth_per_turn_mm > least_depth:
        yield "smaller bites"
    if setup.crib_allowance_mm is None:
        yield "cribbing close on another hold"
    if sheet.order.lens.blank_diameter_mm > sheet.minimum_blank_mm + 1.0:
        yield "a smaller blank"
