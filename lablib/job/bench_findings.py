"""What the bench finds on one lens: cautions of the cut, and a margin under the bound with what helps."""

from collections.abc import Iterator
from dataclasses import replace

from lablib.bench.cautions import cautions
from lablib.bench.machine import LensMaterial
from lablib.bench.margin import CutResult, work_cut
from lablib.bench.parameter import parameters
from lablib.bench.setup import Setup
from lablib.job.edge_findings import edge_findings
from lablib.job.eye_sheet import EyeSheet
from lablib.job.finding import Finding, threshold


def bench_findings(sheet: EyeSheet) -> list[Finding]:
    """Return what the bench finds on one lens that is not held: its edge in the frame, and its cut.

    sheet: the lens, worked.
    """
    return [*edge_findings(sheet, rim_curve_d=sheet.frame.rim_curve_d), *_cut_findings(sheet)]


def _cut_findings(sheet: EyeSheet) -> list[Finding]:
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
    when = "on a bench that is not calibrated" if cut.bench.doubt > 1.0 else "by what was measured here"
    return (
        f"the margin of {words} is {cut.margin:.2f}; {when} the estimate leaves "
        f"a chance of {100 * cut.slip_probability:.0f} % that the lens turns on its block, and the bound is "
        f"{100 * threshold('slip_probability'):.0f} %; the weakest joint is {cut.weakest_interface}; "
        f"{advice}; more clamp force is no remedy"
    )


def _helps(sheet: EyeSheet, cut: CutResult) -> Iterator[str]:
    """What is left to change, the cheapest first; only what raises the margin of this very cut."""
    setup, material, cribbing = cut.setup, cut.material, cut is not sheet.cut
    least_bite = parameters()[f"material.{material.name}.depth_per_turn_mm"].low
    # Only depth control takes the bite it is told.
    smaller = 0.5 if setup.feed == "depth" else 1.0
    smaller_bite = max(least_bite, smaller * material.depth_per_turn_mm)
    tries = (
        ("a clean lens", {"skin": "clean"}, material),
        ("a clean block", {"block_face": "clean"}, material),
        ("a block of the front's curve", {"block_curve_d": None}, material),
        ("a film without a crease", {"film_wrinkle": 0.0}, material),
        ("a dressed wheel", {"wheel": "sharp"}, material),
        ("a fresh pad", {"pad_age_months": 0.0}, material),
        ("a round block where it clears", {"block": "round"}, material),
        ("a film", {"film": True}, material),
        ("a tape on the back", {"back_tape": True}, material),
        ("roughing as the material is made for", {"water": "manual"}, material),
        ("smaller bites", {}, replace(material, depth_per_turn_mm=smaller_bite)),
    )
    for words, changes, made_of in tries:
        changed = replace(setup, **changes)
        if (changed, made_of) != (setup, material) and _raises(cut, changed, made_of, cribbing=cribbing):
            yield words
    if setup.crib_allowance_mm is None:
        yield "cribbing close on another hold"
    # A cut that starts from a crib does not know how large the blank was.
    to_spare = sheet.order.lens.blank_diameter_mm - sheet.minimum_blank_mm
    if (cribbing or setup.crib_allowance_mm is None) and to_spare > threshold("blank_in_hand"):
        yield "a smaller blank"


def _raises(cut: CutResult, setup: Setup, material: LensMaterial, *, cribbing: bool) -> bool:
    again = work_cut(cut.lens, material=material, setup=setup, bench=cut.bench)
    same_pass = again.crib if cribbing else again
    return same_pass.margin > cut.margin * threshold("worthwhile")
