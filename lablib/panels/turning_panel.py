"""The panel of a lens that turns on its block: one practice lens, its simulated cut stepped turn by turn."""

from collections.abc import Sequence
from dataclasses import replace

from lablib.bench.slipping import MOST_TURNS, Simulation
from lablib.errors import LabError
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.report import where
from lablib.job.spoiled import spoiled_job
from lablib.job.ticket import Blocking, Cut, Ticket
from lablib.optics.eye import Eye
from lablib.panels.job_panel import JobPanel
from lablib.panels.job_ticket import NO, NOT_CRIBBED_MM, YES
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.turned_lens_data import DESIGNS, turn_figure, usual_marks
from lablib.pictures.turning import TurningPicture
from lablib.pictures.turning_data import TurningView, turning_view

_SEEN, _LENS, _BENCH = ({"group": words} for words in ("What is shown", "Lens", "Bench"))
# A strong minus lens just under a margin of 1: everything here is changed on its ticket.
_PRACTICE = "line-off"
_MARKS = dict(zip(("three dots", "flat top 28", "progressive"), DESIGNS, strict=True))


def _job(*names: str, group: dict[str, str]) -> tuple[Slider | Choice, ...]:
    """Controls as the job panel has them."""
    return tuple(replace(JobPanel.ranges[name], **group) for name in names)


class TurningPanel(Panel):
    """One lens free to turn on its block, stepped through its cut."""

    draws = TurningPicture
    note = (
        "An invented lens, simulated. That there is trouble, of which kind, and the ranking of jobs can be "
        "learned from it; how many degrees a lens turns cannot be foretold. Whole turns leave no mark: the "
        "line shows only where a lens came to rest. A crib is done on another hold."
    )
    controls = (
        Slider(name="turn", label="Turn shown", unit="", low=0, high=MOST_TURNS, step=1, value=0, **_SEEN),
        Choice(name="marks", label="Marks on the lens", options=tuple(_MARKS), value="three dots", **_SEEN),
        replace(JobPanel.ranges["sphere_d"], high=0.0, **_LENS),
        replace(JobPanel.ranges["thickness_mm"], label="Centre thickness", low=0.8, high=3.0, **_LENS),
        replace(JobPanel.ranges["blank_diameter_mm"], low=60.0, high=80.0, **_LENS),
        *_job("coat", group=_LENS),
        *_job("skin", "film", group=_BENCH),
        Choice(name="back_tape", label="Tape on the back", options=(NO, YES), value=NO, **_BENCH),
        *_job("crib_mm", "bite_mm", "wheel", group=_BENCH),
    )
    _last: tuple[Values, EyeSheet, Simulation] | None = None

    def compute(self, values: Values) -> TurningView:
        """Return the cut as far as the turn that is shown: the last one where there are fewer.

        values: by the control's name.

        Raises LabError when no lens can be made so, or none can be cut so.
        """
        sheet, ran = self._worked({name: values[name] for name in values if name not in ("turn", "marks")})
        at = sheet.cut.lens
        marks = usual_marks(
            _MARKS[values["marks"]],
            centre=complex(at.blank_x_mm, at.blank_y_mm),
            nasal_sign=sheet.eye.nasal_sign,
        )
        return turning_view(ran, marks, turn=int(values["turn"]))

    def numbers(self, data: TurningView) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table: the turn that is shown, then the whole cut.

        data: from `compute`.
        """
        ran = data.ran
        return [
            ("Turned so far", turn_figure(data.turned_deg), "degrees"),
            ("In this turn", turn_figure(data.in_turn_deg), "degrees"),
            ("Margin", f"{ran.result.margin:.2f}", "of the cut"),
            ("Turns planned", f"{ran.planned_turns}", ""),
            ("Sliding begins", *_beginning(data)),
            *(row if data.is_over else (row[0], NOT_KNOWN, "once it is cut") for row in _end_rows(ran)),
        ]

    def sentence(self, data: TurningView) -> str:
        """Return how far the lens has turned, and what it shows in the end.

        data: from `compute`.
        """
        return f"{_so_far(data)}{_ending(data.ran) if data.is_over else ''}"

    def _worked(self, values: Values) -> tuple[EyeSheet, Simulation]:
        """The lens and its simulation; turn and marks alone do not work them again."""
        if self._last is None or self._last[0] != values:
            sheet = sheet_for(values)
            self._last = (values, sheet, sheet.simulation)
        return self._last[1:]


def sheet_for(values: Values) -> EyeSheet:
    """Return the practice lens with the panel's values, worked.

    values: by the control's name.

    Raises LabError when no lens can be made so, or none can be cut so.
    """
    ticket = _ticket_for(values)
    sheet = work_eye(ticket, ticket.right)
    if sheet.cut is None:
        raise LabError(
            f"the {values['blank_diameter_mm']:g} mm blank does not reach the whole outline, so this lens "
            f"cannot be cut from it: take a blank of {sheet.minimum_blank_mm:.1f} mm or more"
        )
    return sheet


def _ticket_for(values: Values) -> Ticket:
    ticket = spoiled_job(_PRACTICE).ticket
    order = ticket.right
    lens = replace(
        order.lens,
        centre_thickness_mm=values["thickness_mm"],
        blank_diameter_mm=values["blank_diameter_mm"],
        coat=values["coat"],
    )
    rx = replace(order.prescription, sphere_d=values["sphere_d"])
    return replace(
        ticket,
        number="from the panel of the turning lens",
        right=replace(order, prescription=rx, lens=lens),
        blocking=Blocking(
            skin=values["skin"], film=values["film"] == YES, back_tape=values["back_tape"] == YES
        ),
        cut=Cut(
            crib_allowance_mm=None if values["crib_mm"] == NOT_CRIBBED_MM else values["crib_mm"],
            depth_per_turn_mm=values["bite_mm"],
            wheel=values["wheel"],
        ),
    )


def _end_rows(ran: Simulation) -> list[tuple[str, str, str]]:
    """What is known once the cut is over."""
    return [
        ("Turns run", "never ends" if ran.never_finishes else f"{ran.turns_run}", ""),
        ("Rim short by", f"{ran.shortfall_mm:.2f}", "mm"),
        ("Heat of sliding", f"{ran.heat_j:.2f}", "J"),
        ("Face warmer by", f"{ran.rise_k:.1f}", "K"),
        ("Sign", ran.sign, ""),
    ]


def _beginning(data: TurningView) -> tuple[str, str]:
    begins = data.ran.begins
    if begins is not None and begins.turn <= data.at:
        return f"turn {begins.turn}", where(begins.angle_deg, Eye.RIGHT)
    return ("nowhere", "") if data.is_over else ("not so far", "")


def _so_far(data: TurningView) -> str:
    if not data.at:
        return "Before the first turn the lens's line lies along the block's."
    begins = data.ran.begins
    if begins is None or begins.turn > data.at:
        return f"After turn {data.at} the lens has not turned on its block."
    return (
        f"After turn {data.at} the lens has turned {turn_figure(data.turned_deg)} degrees on its block, "
        f"{turn_figure(data.in_turn_deg)} of them in this turn; it first slid in turn {begins.turn}, "
        f"{where(begins.angle_deg, Eye.RIGHT)}."
    )


def _ending(ran: Simulation) -> str:
    """What comes of it once the cut is over."""
    if ran.begins is None:
        return " The cut is over: it held all through and shows no sign."
    over = "It never finishes: the lens spins" if ran.never_finishes else "The cut is over"
    shows = " and ".join(ran.signs) or "no sign"
    return f" {over}; {ran.shortfall_mm:.2f} mm short, {ran.rise_k:.1f} K warmer: {shows}."
