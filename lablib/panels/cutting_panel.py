"""The panel of a cut turn by turn: what the wheel asks of the lens in each turn, and what holds it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lablib.bench.cautions import cautions
from lablib.bench.machine import Bench, LensMaterial
from lablib.bench.margin import CutResult, work_cut
from lablib.bench.parameter import parameters
from lablib.bench.setup import SENSES, Setup, feeds, waters
from lablib.errors import LabError
from lablib.job.bench_step import cutting_material, setup_for
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.report import where
from lablib.panels.cutting_turns import OneTurn, all_turns
from lablib.panels.job_panel import JobPanel
from lablib.panels.job_ticket import ticket_for
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.cutting import CuttingPicture
from lablib.pictures.cutting_data import CutView
from lablib.pictures.torque_round import top_for

_CUT, _LENS = {"group": "Cut"}, {"group": "Lens"}
_START = {name: spec.value for name, spec in JobPanel.ranges.items()}
_MOST_TURNS = 40
SO_FAR, ALL = "so far", "all"
_MINDED = {
    "wheel-drives-the-lens": " Running with the lens, the wheel snatches round a lens that starts to turn.",
    "head-force-does-not-yield": " A lens that turns under a head force stops under the wheel.",
    "roughed-against-the-manual": " It is roughed against the machine's manual.",
    "motor-at-its-limit": " The wheel motor is at its limit.",
    "block-does-not-clear": " The block stands out.",
}
# What changes the drawing and not the cut.
_DRAWING = ("turn", "bars")
# "Manual" alone could be read as done by hand.
_WATERS = {"by the manual" if name == "manual" else name: name for name in waters()}
_MACHINE = ("wheel_speed_rpm", "lens_speed_rpm")


def _machine(name: str, label: str, step: float) -> Slider:
    """A slider over the range of a parameter of the machine."""
    row = parameters()[name]
    ends = {"low": row.low, "high": row.high, "value": row.default}
    return Slider(name=name, label=label, unit=row.unit, step=step, **ends, **_CUT)


def _torque(name: str, label: str, step: float) -> Slider:
    """A slider over the range of a torque, in N m."""
    row = parameters()[name]
    low, high, value = (part / 1000.0 for part in (row.low, row.high, row.default))
    return Slider(
        name=name.replace("_nmm", "_nm"),
        label=label,
        unit="N m",
        step=step,
        low=low,
        high=high,
        value=value,
        **_CUT,
    )


def _job(*names: str, group: dict[str, str]) -> tuple[Slider | Choice, ...]:
    """Controls as the job panel has them."""
    return tuple(replace(JobPanel.ranges[name], **group) for name in names)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CutSheet(CutView):
    """A cut, and one turn of it.

    cut: the job's own cut; its cribbing is part of it.
    turns: every turn in its order, cribbing first.
    """

    cut: CutResult
    turns: tuple[OneTurn, ...]

    @property
    def worst(self) -> int:
        """Which of the drawn turns has the least margin, from 0."""
        return min(range(self.drawn), key=lambda at: self.turns[at].summary.margin)

    @property
    def greatest(self) -> int:
        """Which of the drawn turns has the greatest torque, from 0."""
        return max(range(self.drawn), key=lambda at: self.bars[at].turns_nm)


class CuttingPanel(Panel):
    """One lens under the wheel, turn by turn."""

    draws = CuttingPicture
    note = JobPanel.note
    controls = (
        Slider(name="turn", label="Turn", unit="", low=1, high=_MOST_TURNS, step=1, value=1, **_CUT),
        Choice(name="bars", label="Turns drawn", options=(SO_FAR, ALL), value=ALL, **_CUT),
        *_job("crib_mm", "bite_mm", "wheel", group=_CUT),
        Choice(name="feed", label="Feed", options=tuple(feeds()), value="depth", **_CUT),
        _machine("head_force_n", "Head force", 1.0),
        _torque("torque_cap_nmm", "Torque cap", 0.05),
        Choice(name="water", label="Roughed", options=tuple(_WATERS), value=next(iter(_WATERS)), **_CUT),
        Choice(name="wheel_sense", label="Wheel runs", options=SENSES, value=SENSES[0], **_CUT),
        _machine("wheel_speed_rpm", "Wheel speed", 250.0),
        _machine("lens_speed_rpm", "Lens speed", 0.5),
        *_job(
            "eye", "sphere_d", "material", "front_curve_d", "thickness_mm", "blank_diameter_mm", group=_LENS
        ),
        *_job("monocular_pd_mm", "coat", group=_LENS),
    )
    _last: tuple[Values, EyeSheet, CutResult, tuple[OneTurn, ...]] | None = None

    def compute(self, values: Values) -> CutSheet:
        """Return the cut, and the turn that is shown: the last one where there are fewer.

        values: by the control's name.

        Raises LabError when no lens can be made so, or none can be cut so.
        """
        sheet, cut, turns = self._worked({name: values[name] for name in values if name not in _DRAWING})
        at = min(int(values["turn"]), len(turns)) - 1
        bars = tuple(turn.bar for turn in turns)
        holds = max(float(part.hold_nmm.max()) for part in (cut, cut.crib) if part is not None)
        return CutSheet(
            sheet=sheet,
            shown=turns[at].shown,
            at=at,
            bars=bars,
            drawn=len(bars) if values["bars"] == ALL else at + 1,
            top_nm=top_for(max(bar.turns_nm for bar in bars), holds / 1000.0),
            cut=cut,
            turns=turns,
        )

    def numbers(self, data: CutSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table: first the turn that is shown, at its greatest torque.

        data: from `compute`.
        """
        turn, bar = data.turns[data.at].summary, data.bars[data.at]
        cutting, at = data.shown.cut.cutting, turn.peak.index
        return [
            ("Torque of this turn", f"{bar.turns_nm:.2f}", "N m"),
            ("There it holds", f"{bar.holds_nm:.2f}", "N m"),
            ("Tangential force", f"{turn.force_n:.1f}", "N"),
            ("Arm of both forces", f"{cutting.arm_mm[at]:.1f}", "mm"),
            ("Depth of the bite", f"{cutting.plan.depth_mm[at]:.2f}", "mm"),
            ("Thickness there", f"{cutting.thickness_mm[at]:.2f}", "mm"),
            ("Removal rate", f"{cutting.removal_mm3_per_s[at]:.0f}", "mm3/s"),
            ("Margin of this turn", f"{turn.margin:.2f}", ""),
            ("Margin", f"{data.cut.margin:.2f}", "of the cut"),
            ("Crib margin", "not cribbed" if data.cut.crib is None else f"{data.cut.crib.margin:.2f}", ""),
            ("Wheel rim speed", f"{data.cut.bench.surface_speed_m_per_s:.1f}", "m/s"),
            ("Time of all turns", f"{sum(turn.summary.seconds for turn in data.turns):.0f}", "s"),
        ]

    def sentence(self, data: CutSheet) -> str:
        """Return what the wheel asks in the turn that is shown, and in which turn it asks most.

        data: from `compute`.
        """
        bar, count = data.bars[data.at], len(data.bars)
        place = where(data.turns[data.at].summary.peak.angle_deg, data.sheet.eye)
        asks = f"the wheel asks at most {bar.turns_nm:.2f} N m, {place}, against {bar.holds_nm:.2f}"
        greatest, worst = data.greatest, data.worst
        when = "It" if data.drawn == count else "So far it"
        most = f"{when} asks most in turn {greatest + 1}, {data.bars[greatest].turns_nm:.2f} N m"
        least = f"the margin is least in turn {worst + 1}, {data.turns[worst].summary.margin:.2f}"
        return f"Turn {data.at + 1} of {count}, {data.kind}: {asks}. {most}; {least}.{_minded(data.cut)}"

    def _worked(self, values: Values) -> tuple[EyeSheet, CutResult, tuple[OneTurn, ...]]:
        """The lens and its cut; the turn slider alone does not work them again."""
        if self._last is None or self._last[0] != values:
            job = job_for(values)
            cut = cut_for(job, values)
            self._last = (values, job.sheet, cut, all_turns(cut))
        return self._last[1:]


def _minded(cut: CutResult) -> str:
    """What is to be minded about the cut itself, shortly."""
    return "".join(_MINDED.get(caution.name, "") for caution in cautions(cut))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CutJob:
    """A lens that is to be cut.

    sheet: the lens, worked; material: how it cuts; setup: how it is set up, but for what `cut_for` sets.
    """

    sheet: EyeSheet
    material: LensMaterial
    setup: Setup


def job_for(values: Values) -> CutJob:
    """Return a lens of the job panel's kind, ready to be cut.

    values: by the control's name; where the job panel has a control that is not given, its start counts.

    Raises LabError when no lens can be made so, or its material is not cut so.
    """
    ticket = ticket_for(_START | values)
    order = ticket.eyes[0]
    try:
        material = cutting_material(order, ticket.cut)
    except LabError as fault:
        # The bench knows only the bite; whose it is not, the reader has to hear.
        raise LabError(f"{order.lens.material.words}: {fault}") from fault
    sheet = work_eye(ticket, order)
    if sheet.cut is None:
        raise LabError(
            f"the {order.lens.blank_diameter_mm:g} mm blank does not reach the whole outline, so this lens "
            f"cannot be cut from it: take a blank of {sheet.minimum_blank_mm:.1f} mm or more"
        )
    return CutJob(sheet=sheet, material=material, setup=setup_for(ticket, order))


def cut_for(job: CutJob, values: Values) -> CutResult:
    """Return the cut of a lens on a machine of its own.

    job: the lens; values: feed, water and machine by the control's name.

    Raises LabError when it cannot be cut so.
    """
    setup = replace(
        job.setup,
        torque_cap_nmm=values["torque_cap_nm"] * 1000.0,
        water=_WATERS[values["water"]],
        **{name: values[name] for name in ("feed", "head_force_n", "wheel_sense")},
    )
    bench = Bench(**{name: values[name] for name in _MACHINE})
    return work_cut(job.sheet.cut.lens, material=job.material, setup=setup, bench=bench)
