"""What the edge of one lens has to say about its mounting: bevel, groove, holes."""

from lablib.bench.bevel import Edge, short_for_rim_mm
from lablib.bench.bevel_choice import BevelChoice, choose_bevel, is_too_thin_for_a_bevel
from lablib.bench.edges import RIMS, edge_default, least_edge_mm
from lablib.bench.faces import engraved_curve_d
from lablib.errors import LabError
from lablib.job.eye_sheet import EyeSheet
from lablib.job.finding import Finding
from lablib.optics.care import care_table


def edge_of(sheet: EyeSheet) -> Edge:
    """Return the edge of a worked lens, as the bench sees it.

    sheet: the lens; its prescription is not held.

    Raises LabError while the prescription is held.
    """
    if sheet.finished is None:
        raise LabError(f"{sheet.eye} lens is held: it has no edge before the prescription is settled")
    return Edge(
        radius_mm=sheet.outline.radius_mm,
        thickness_mm=sheet.finished.edge_mm,
        front_curve_d=engraved_curve_d(sheet.finished.lens.front.steep_per_mm),
    )


def bevel_of(sheet: EyeSheet, *, rim_curve_d: float | None = None) -> BevelChoice | None:
    """Return the bevels tried on a worked lens; None in a frame that holds it otherwise, or of no kind.

    sheet: the lens; rim_curve_d: of the frame, for index 1.530 [D], None where it is not known.

    Raises LabError while the prescription is held, or for a rim curve that does not reach the outline.
    """
    if sheet.frame.kind not in RIMS:
        return None
    return choose_bevel(edge_of(sheet), rim=sheet.frame.kind, rim_curve_d=rim_curve_d)


def edge_findings(sheet: EyeSheet, *, rim_curve_d: float | None = None) -> list[Finding]:
    """Return what speaks against the mounting the ticket names; nothing where it names none.

    sheet: the lens, worked and not held; rim_curve_d: as in `bevel_of` [D].

    A groove is looked at with the thickness of the lens, `lablib.job.checks`.
    """
    if sheet.frame.kind == "drilled":
        return _holes(sheet)
    if sheet.frame.kind not in RIMS:
        return []
    if is_too_thin_for_a_bevel(edge_of(sheet)):
        return [_thin_bevel(sheet)]
    # Without a rim curve there is always room in the middle of such an edge.
    if rim_curve_d is None or bevel_of(sheet, rim_curve_d=rim_curve_d).chosen:
        return []
    return [_no_bevel(sheet, rim_curve_d)]


def _thin_bevel(sheet: EyeSheet) -> Finding:
    least, needed = float(sheet.finished.edge_mm.min()), least_edge_mm(sheet.frame.kind)
    return Finding(
        name="edge-too-thin-for-a-bevel",
        eye=sheet.eye,
        text=f"the thinnest edge is {least:.2f} mm and a bevel needs {needed:g} mm, "
        f"{edge_default('bevel_side_mm'):g} mm either side of its tip: order the lens with a least edge of "
        f"{needed:g} mm",
    )


def _no_bevel(sheet: EyeSheet, rim_curve_d: float) -> Finding:
    short = short_for_rim_mm(edge_of(sheet), rim_curve_d=rim_curve_d)
    thicker = f", or an edge thicker by {short:.1f} mm" if round(short, 1) else ""
    return Finding(
        name="no-bevel-holds",
        eye=sheet.eye,
        text=f"{bevel_of(sheet, rim_curve_d=rim_curve_d).words}; take a front nearer the rim's curve of "
        f"{rim_curve_d:g} D{thicker}, or another frame",
    )


def _holes(sheet: EyeSheet) -> list[Finding]:
    found = [_bears_no_holes(sheet)]
    least, needed = round(float(sheet.finished.edge_mm.min()), 2), least_edge_mm("drilled")
    if least < needed:
        found.append(
            Finding(
                name="edge-too-thin-for-holes",
                eye=sheet.eye,
                text=f"the thinnest edge is {least:.2f} mm and a hole needs {needed:g} mm where it is "
                f"drilled: check the thickness there, or order a least edge of {needed:g} mm",
            )
        )
    return [one for one in found if one is not None]


def _bears_no_holes(sheet: EyeSheet) -> Finding | None:
    name = sheet.order.lens.material.name
    bears = care_table().get(name)
    if bears is not None and bears.holes:
        return None
    why = (
        "whether this material bears holes is not known: ask its maker"
        if bears is None
        else f"{sheet.order.lens.material.words}: {bears.holes_words}: order a tough material that is fit "
        f"for holes"
    )
    return Finding(name="not-fit-for-holes", eye=sheet.eye, text=why)
