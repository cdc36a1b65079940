"""What the sheet must ask, and what the bench finds: each with a stable name."""

from lablib.errors import LabError
from lablib.job.bench_findings import bench_findings
from lablib.job.eye_sheet import EyeSheet
from lablib.job.finding import Finding, threshold
from lablib.job.multifocal_checks import multifocal_findings, multifocal_holds
from lablib.job.multifocal_sheet import cut_out
from lablib.job.ticket import Hold, Ticket
from lablib.optics.power import written_power
from lablib.optics.prescription import at_vertex_distance


def holds(ticket: Ticket) -> tuple[Hold, ...]:
    """Return every question that must be answered before the job goes on.

    ticket: the job. Faults to catch: common practice, no source.
    """
    asked = [hold for order in ticket.eyes for hold in order.holds]
    powers = [order.prescription for order in ticket.eyes]
    if len(powers) == 2 and None not in powers and not ticket.note:
        right, left = powers
        asked += _additions(right.addition_d, left.addition_d)
        if right.spherical_equivalent_d * left.spherical_equivalent_d < 0.0:
            asked.append(
                Hold(
                    name="eyes-of-opposite-sign",
                    question=f"Right {right} and left {left} have opposite signs: is that meant? "
                    f"A note on the ticket settles it.",
                )
            )
    return (*asked, *multifocal_holds(ticket))


def _additions(right_d: float, left_d: float) -> list[Hold]:
    """Additions that differ, or stand in one eye alone, go back unless a note says that they are meant."""
    if right_d == left_d:
        return []
    if right_d and left_d:
        name, what = "additions-differ", f"Right {right_d:+.2f} and left {left_d:+.2f} D of addition differ"
    else:
        name, what = "addition-in-one-eye", f"Addition {right_d or left_d:+.2f} D stands in one eye only"
    return [Hold(name=name, question=f"{what}: is that meant? A note on the ticket settles it.")]


def findings(ticket: Ticket, sheets: tuple[EyeSheet, ...]) -> tuple[Finding, ...]:
    """Return what the bench should know before it goes on.

    ticket: the job; sheets: its lenses, worked.
    """
    found = [finding for sheet in sheets for finding in _one_lens(ticket, sheet)]
    return (*found, *_pair(ticket), *_frame(ticket))


def _one_lens(ticket: Ticket, sheet: EyeSheet) -> list[Finding]:
    checks = [*_read_so(sheet), _blank(sheet), _stock_prism(sheet), _addition(sheet), *_vertex(ticket, sheet)]
    checks += multifocal_findings(sheet)
    if sheet.finished is not None:
        checks += [_thin_place(sheet), _groove(sheet), *bench_findings(sheet)]
    return [finding for finding in checks if finding is not None]


def _read_so(sheet: EyeSheet) -> list[Finding]:
    return [
        Finding(name="prescription-read-so", eye=sheet.eye, text=f"{note}: check it against the order")
        for note in sheet.order.read_so
    ]


def _blank(sheet: EyeSheet) -> Finding | None:
    # Where it is known where the blank has its segment, that decides and not the distance centre.
    if sheet.blank_covers or cut_out(sheet.order, sheet.multifocal):
        return None
    diameter, needed = sheet.order.lens.blank_diameter_mm, sheet.minimum_blank_mm
    short = "" if sheet.blank_reaches else " and does not reach the outline, so there are no bench figures"
    return Finding(
        name="blank-does-not-cover",
        eye=sheet.eye,
        text=f"blank {diameter:g} mm is smaller than the least blank {needed:.1f} mm{short}: take a larger "
        f"blank or a smaller frame; moving the optical centre to make it fit would put prism in",
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
    if rx is None or not rx.addition_d or sheet.order.lens.multifocal is not None:
        return None
    return Finding(
        name="addition-not-in-the-lens",
        eye=sheet.eye,
        text=f"the addition of {rx.addition_d:+.2f} D is not in this single vision lens, which is worked at "
        f"the distance power: for a near pair the sphere is "
        f"{written_power(rx.sphere_d + rx.addition_d)} D and the near distance is used",
    )


def _vertex(ticket: Ticket, sheet: EyeSheet) -> list[Finding]:
    rx, wearer = sheet.order.prescription, ticket.wearer
    worn, tested = wearer.vertex_distance_mm, wearer.tested_vertex_distance_mm
    if rx is None:
        return []
    strongest = max(abs(rx.sphere_d), abs(rx.sphere_d + rx.cylinder_d))
    if strongest < threshold("vertex_power"):
        return []
    if worn is None or tested is None:
        missing = [words for value, words in ((tested, "as tested"), (worn, "as worn")) if value is None]
        return [
            Finding(
                name="vertex-distance-not-given",
                eye=sheet.eye,
                text=f"{rx} is strong enough for the vertex distance to matter, and the ticket does not give "
                f"it {' and '.join(missing)}: ask the prescriber; the power is worked as ordered",
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
    least = round(sheet.finished.least_mm, 2)
    if least >= threshold("thin_place"):
        return None
    return Finding(
        name="thin-place",
        eye=sheet.eye,
        text=f"the thinnest place of the lens is {least:.2f} mm, under "
        f"{threshold('thin_place'):g} mm: it may flex or break; ask for more thickness",
    )


def _groove(sheet: EyeSheet) -> Finding | None:
    least, needed = round(float(sheet.finished.edge_mm.min()), 2), threshold("groove_edge")
    if sheet.frame.kind != "grooved" or least >= needed:
        return None
    return Finding(
        name="edge-too-thin-for-a-groove",
        eye=sheet.eye,
        text=f"the thinnest edge is {least:.2f} mm and a groove needs about {needed:g} mm: "
        f"order the lens with a least edge of {needed:g} mm",
    )


def _frame(ticket: Ticket) -> list[Finding]:
    """What a traced frame has to say; a rim whose eye gets no lens is nobody's matter."""
    traces = ticket.frame.traces
    remarks = () if traces is None else traces.remarks(dbl_mm=ticket.frame.dbl_mm)
    eyes = (None, *(order.eye for order in ticket.eyes))
    return [Finding(name=one.name, eye=one.eye, text=one.text) for one in remarks if one.eye in eyes]


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
