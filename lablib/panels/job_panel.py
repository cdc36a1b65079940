"""The panel of one job: the lens, how it is blocked and cut, and whether it holds."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from lablib.bench.contact import block_words
from lablib.bench.machine import skin_names, wheel_names
from lablib.bench.margin import CutResult
from lablib.errors import LabError
from lablib.job.bench_step import cutting_material
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.report import percent, where
from lablib.job.ticket import COATS, Ticket
from lablib.job.ticket_writing import ticket_text
from lablib.panels.job_ticket import NO, NOT_CRIBBED_MM, YES, ticket_for, values_of
from lablib.panels.lens_panel import LensPanel
from lablib.panels.panel import Values
from lablib.panels.specs import Choice, Slider
from lablib.panels.ticket_panel import TicketPanel
from lablib.pictures.job import JobPicture

_BENCH = {"group": "Bench"}
# The hard job of the demo tickets, right eye.
_START = {
    "sphere_d": -8.0,
    "material": "thiourethane-1.67",
    "front_curve_d": 2.0,
    "thickness_mm": 1.2,
    "blank_diameter_mm": 72.0,
}


class JobPanel(TicketPanel):
    """One job with everything that decides whether its lens turns on its block."""

    draws = JobPicture
    ticket_name = "my-job"
    note = (
        "Teaching estimate: rankings and ratios are teachable; the absolute margin is uncertain about "
        "threefold until this bench is calibrated."
    )
    controls = (
        *(replace(spec, value=_START.get(spec.name, spec.value)) for spec in LensPanel.controls),
        Choice(name="coat", label="Coat", options=COATS, value="slick", **_BENCH),
        Choice(name="film", label="Film", options=(NO, YES), value=NO, **_BENCH),
        Slider(
            name="crib_mm",
            label="Crib leaves",
            unit="mm",
            low=2.0,
            high=NOT_CRIBBED_MM,
            step=1.0,
            value=NOT_CRIBBED_MM,
            **_BENCH,
        ),
        Choice(name="block", label="Block", options=tuple(block_words()), value="round", **_BENCH),
        Slider(
            name="bite_mm",
            label="Bite per turn",
            unit="mm",
            low=0.75,
            high=3.0,
            step=0.25,
            value=2.0,
            **_BENCH,
        ),
        Choice(name="wheel", label="Wheel", options=wheel_names(), value="sharp", **_BENCH),
        Choice(name="skin", label="Lens surface", options=skin_names(), value="clean", **_BENCH),
    )

    def compute(self, values: Values) -> EyeSheet:
        """Return the lens and its cut, worked.

        values: by the control's name.

        Raises LabError when no lens can be made so, or none can be cut so.
        """
        ticket = ticket_for(values)
        _require_bite(ticket)
        sheet = work_eye(ticket, ticket.eyes[0])
        if sheet.cut is None:
            raise LabError(
                f"the {sheet.order.lens.blank_diameter_mm:g} mm blank does not reach the whole outline, so "
                f"this lens cannot be cut from it: take a blank of {sheet.minimum_blank_mm:.1f} mm or more, "
                f"or a smaller frame"
            )
        return sheet

    def numbers(self, data: EyeSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: the lens and its cut, worked.
        """
        cut = data.cut
        return [
            ("Margin", f"{cut.margin:.2f}", ""),
            ("Slip, now", percent(cut.slip_probability), ""),
            ("Slip, calibrated", percent(cut.slip_probability_calibrated), ""),
            ("Weakest joint", cut.weakest_interface, ""),
            ("Front holds", _nm(cut.front_hold_nmm), "N m"),
            ("Back tip adds", _nm(cut.back_hold_nmm), "N m"),
            *_wheel_rows(data, cut),
            ("Clamp force", f"{cut.holding.clamp_force_n:.0f}", "N"),
            ("Thickest edge", f"{data.finished.edge_mm.max():.2f}", "mm"),
            ("Least blank, exact", f"{data.minimum_blank_mm:.1f}", "mm"),
            ("Block clears", "yes" if cut.block_clears else "no", f"{abs(cut.block_clearance_mm):.1f} mm"),
            ("Crib margin", "not cribbed" if cut.crib is None else f"{cut.crib.margin:.2f}", ""),
            ("Axis may be off", *_axis(data)),
        ]

    def sentence(self, data: EyeSheet) -> str:
        """Return whether the lens holds by the estimate, and why.

        data: the lens and its cut, worked.
        """
        cut = data.cut
        # It may lie at another place than the greatest torque: the lever arm counts for the hold, too.
        turn, hold = (_nm(float(part[cut.least.index])) for part in (cut.cutting.torque_nmm, cut.hold_nmm))
        verdict = "holds" if cut.margin > 1.0 else "turns on its block"
        place = f"turn {cut.least.turn}, {where(cut.least.angle_deg, data.eye)}"
        said = (
            f"the {data.eye} lens {verdict}, margin {cut.margin:.2f}: the weakest joint is "
            f"{cut.weakest_interface}; in {place}, the wheel asks {turn} against {hold} N m."
        )
        return f"{_cribbing(cut)}{said}{'' if cut.block_clears else ' Block stands out.'}"

    def to_ticket(self, values: Values) -> str:
        """Return the text of a ticket for one eye.

        values: by the control's name.
        """
        return ticket_text(ticket_for(values))

    def from_ticket(self, path: Path) -> tuple[Values, str]:
        """Return the values of the right eye of a ticket, or of the left where it has no right one.

        path: the ticket file.

        Raises LabError when it cannot be read, is held, or asks for what changes the margin and is not shown.
        """
        return values_of(Ticket.read(path))


def _cribbing(cut: CutResult) -> str:
    """How the sentence begins: a lens that turns while it is cribbed never comes to the cut."""
    if cut.crib is None:
        return "By the estimate "
    if cut.crib.margin > 1.0:
        return f"By the estimate cribbing here holds, margin {cut.crib.margin:.2f}; then "
    return f"By the estimate it turns while cribbed here, margin {cut.crib.margin:.2f}; cribbed elsewhere, "


def _require_bite(ticket: Ticket) -> None:
    """Say which material does not take the bite: the bench knows only the bite."""
    order = ticket.eyes[0]
    try:
        cutting_material(order, ticket.cut)
    except LabError as fault:
        raise LabError(f"{order.lens.material.words}: {fault}") from fault


def _wheel_rows(sheet: EyeSheet, cut: CutResult) -> list[tuple[str, str, str]]:
    """What the wheel asks, greatest over all turns."""
    return [
        ("Greatest torque", _nm(cut.peak_cutting_torque_nmm), "N m"),
        ("Greatest in turn", f"{cut.peak.turn}", where(cut.peak.angle_deg, sheet.eye)),
        ("Greatest force", f"{cut.peak_tangential_force_n:.1f}", "N"),
        ("Greatest removal", f"{cut.peak_removal_rate_mm3_per_s:.0f}", "mm3/s"),
    ]


def _axis(sheet: EyeSheet) -> tuple[str, str]:
    limit = sheet.axis_tolerance_deg
    return ("no axis", "") if limit is None else (f"{limit:g}", "degrees")


def _nm(torque_nmm: float) -> str:
    return f"{torque_nmm / 1000.0:.2f}"
