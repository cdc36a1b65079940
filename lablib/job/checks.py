"""What the sheet must ask, and what the bench finds: each with a stable name."""

from dataclasses import dataclass

from lablib.bench.cautions import cautions
from lablib.bench.margin import CutResult
from lablib.datafile import read_table
from lablib.errors import LabError
from lablib.job.eye_sheet import EyeSheet
from lablib.job.ticket import Hold, Ticket
from lablib.optics.eye import Eye
from lablib.optics.prescription import at_vertex_distance


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Something the bench should know before it goes on.

    name: a stable name, for programs.
    text: what was found and what to do next, in words.
    eye: which lens it is about, None for the pair.
    """

    name: str
    text: str
    eye: Eye | None = None


def holds(ticket: Ticket) -> tuple[Hold, ...]:
    """Return every question that must be answered before the job goes on.

    ticket: the job. Faults to catch: common practice, no source.
    """
    asked = [hold for order in ticket.eyes for hold in order.holds]
    powers = [order.prescription for order in ticket.eyes]
    if len(powers) == 2 and None not in powers and not ticket.note:
        right, left = powers
        if right.spherical_equivalent_d * left.spherical_equivalent_d < 0.0:
            asked.append(
                Hold(
                    name="eyes-of-opposite-sign",
                    question=f"Right {right} and left {left} have opposite signs: is that meant? "
                    f"A note on the ticket settles it.",
                )
            )
    return tuple(asked)


def findings(ticket: Ticket, sheets: tuple[EyeSheet, ...]) -> tuple[Finding, ...]:
    """Return what the bench should know before it goes on.

    ticket: the job; sheets: its lenses, worked.
    """
    found = [finding for sheet in sheets for finding in _one_lens(ticket, sheet)]
    return (*found, *_pair(ticket))


def _one_lens(ticket: Ticket, sheet: EyeSheet) -> list[Finding]:
    checks = [_blank(sheet), _stock_prism(sheet), _addition(sheet), *_vertex(ticket, sheet)]
    if sheet.finished is not None:
        checks += [_thin_place(sheet), _groove(sheet), _cutting_not_known(sheet), *_bench(sheet)]
    return [finding for finding in checks if finding is not None]


def _blank(sheet: EyeSheet) -> Finding | None:
    if sheet.blank_covers:
        return None
    diameter, needed = sheet.order.lens.blank_diameter_mm, sheet.minimum_blank_mm
    return Finding(
        name="blank-does-not-cover",
        eye=sheet.eye,
        text=f"blank {diameter:g} mm is smaller than the least blank {needed:.1f} mm: take a larger blank or "
        f"a smaller frame; moving the optical centre to make it fit would put prism in",
    )


def _stock_prism(sheet: EyeSheet) -> Finding | None:
    if sheet.order.lens.supply != "stock" or not sheet.order.prism:
        return None
    return Finding(
        name="stock-with-prism",
        eye=sheet.eye,
        text="prism is prescribed but the lens is from stock: a stock lens is not made with prism; "
        "order it surfaced",
    )


def _addition(sheet: EyeSheet) -> Finding | None:
    rx = sheet.order.prescription
    if rx is None or not rx.addition_d:
        return None
    return Finding(
        name="addition-not-in-the-lens",
        eye=sheet.eye,
        text=f"the addition of {rx.addition_d:+.2f} D is not in this single vision lens, which is worked at "
        f"the distance power: for a near pair the sphere is {rx.sphere_d + rx.addition_d:+.2f} D "
        f"and the near distance is used",
    )


def _vertex(ticket: Ticket, sheet: EyeSheet) -> list[Finding]:
    rx, wearer = sheet.order.prescription, ticket.wearer
    worn, tested = wearer.vertex_distance_mm, wearer.tested_vertex_distance_mm
    if rx is None:
        return []
    strongest = max(abs(rx.sphere_d), abs(rx.sphere_d + rx.cylinder_d))
    if strongest < _threshold("vertex_power"):
        return []
    if worn is None or tested is None:
        return [
            Finding(
                name="vertex-distance-not-given",
                eye=sheet.eye,
                text=f"{rx} is strong enough for the vertex distance to matter, and the ticket does not give "
                f"it as tested and as worn: the power is worked as ordered",
            )
        ]
    if worn == tested:
        return []
    return [_vertex_differs(sheet, tested, worn)]


def _vertex_differs(sheet: EyeSheet, tested: float, worn: float) -> Finding:
    rx = sheet.order.prescription
    try:
        same = f"the same effect needs {at_vertex_distance(rx, from_mm=tested, to_mm=worn)}"
    except LabError as fault:
        same = str(fault)
    return Finding(
        name="vertex-distance-differs",
        eye=sheet.eye,
        text=f"tested at {tested:g} mm, worn at {worn:g} mm: {same}; the power is worked as ordered, "
        f"and whether it is changed is for the prescriber to say",
    )


def _thin_place(sheet: EyeSheet) -> Finding | None:
    least = sheet.finished.least_mm
    if least >= _threshold("thin_place"):
        return None
    return Finding(
        name="thin-place",
        eye=sheet.eye,
        text=f"the thinnest place of the lens is {least:.2f} mm, under "
        f"{_threshold('thin_place'):g} mm: it may flex or break; ask for more thickness",
    )


def _groove(sheet: EyeSheet) -> Finding | None:
    least, needed = float(sheet.finished.edge_mm.min()), _threshold("groove_edge")
    if sheet.frame.kind != "grooved" or least >= needed:
        return None
    return Finding(
        name="edge-too-thin-for-a-groove",
        eye=sheet.eye,
        text=f"the thinnest edge is {least:.2f} mm and a groove needs about {needed:g} mm: "
        f"order the lens with a least edge of {needed:g} mm",
    )


def _cutting_not_known(sheet: EyeSheet) -> Finding | None:
    if sheet.order.lens.material.cuts_like is not None:
        return None
    return Finding(
        name="cutting-not-known",
        eye=sheet.eye,
        text="how this material cuts is not known, so there are no bench figures: "
        "add cuts_like with the name of a material of the table that cuts like it",
    )


def _bench(sheet: EyeSheet) -> list[Finding]:
    """What the cut itself says, and a margin under the bound, for the job's cut and for cribbing."""
    if sheet.cut is None:
        return []
    found = [Finding(name=one.name, eye=sheet.eye, text=one.text) for one in cautions(sheet.cut)]
    passes = [
        ("margin-below-bound", "the cut", sheet.cut),
        ("crib-margin-below-bound", "cribbing", sheet.cut.crib),
    ]
    bound = _threshold("slip_probability")
    for name, words, cut in passes:
        if cut is not None and cut.slip_probability > bound:
            found.append(Finding(name=name, eye=sheet.eye, text=_margin_words(words, cut, bound)))
    return found


def _margin_words(words: str, cut: CutResult, bound: float) -> str:
    setup = cut.setup
    helps = ["a smaller blank", "smaller bites"]
    helps += [] if setup.crib_allowance_mm is not None else ["cribbing close on another hold"]
    helps += [] if setup.film else ["a film"]
    return (
        f"the margin of {words} is {cut.margin:.2f}: by the estimate {100 * cut.slip_probability:.0f} % of "
        f"such lenses turn on their block, and the bound is {100 * bound:.0f} %; the weakest joint is "
        f"{cut.weakest_interface}; {', '.join(helps[:-1])} or {helps[-1]} would help, more clamp force is "
        f"no remedy"
    )


def _pair(ticket: Ticket) -> list[Finding]:
    powers = [order.prescription for order in ticket.eyes if order.prescription is not None]
    if len(powers) == 2 and powers[0].cylinder_d * powers[1].cylinder_d < 0.0:
        other = powers[1].transposed()
        return [
            Finding(
                name="forms-differ",
                text=f"the eyes are written in different forms: in the right eye's form the left is {other}",
            )
        ]
    return []


def _threshold(name: str) -> float:
    return read_table("lablib.job", "findings.toml")[name]["value"]
