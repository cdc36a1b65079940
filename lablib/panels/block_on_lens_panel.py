"""The panel of block against lens: where the block stands, and whether block and tip suit the surfaces."""

from collections.abc import Sequence
from dataclasses import replace

from lablib.bench.contact import block_words
from lablib.bench.curve_match import opens
from lablib.bench.parameter import parameters
from lablib.bench.tip_fit import STIFFNESSES
from lablib.errors import LabError
from lablib.job.bench_order import BLOCKING_POINTS, Blocking
from lablib.job.eye_sheet import work_eye
from lablib.panels.block_bearing import block_on_lens
from lablib.panels.job_panel import JobPanel
from lablib.panels.lens_ticket import CENTRE, ticket_for
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.block_on_lens import BlockOnLensPicture, gap_words
from lablib.pictures.block_on_lens_data import BlockOnLens
from lablib.pictures.grip import nm

SWIVELS, RIGID = "swivel", "rigid"
_FRAME, _LENS, _BLOCKING = ({"group": words} for words in ("Frame and wearer", "Lens", "Blocking"))
# What the lens panel has controls for and this one has not.
_FIXED = {
    "eye": "right",
    "thickness_at": CENTRE,
    "supply": "surfaced",
    "dbl_mm": 18.0,
    "blank_diameter_mm": 80.0,
}


def _as_there(name: str, group: dict[str, str], **changed: object) -> Slider | Choice:
    """A control as the job panel has it."""
    return replace(JobPanel.ranges[name], **group | changed)


def _number(
    name: str, label: str, unit: str, ends: tuple[float, float, float, float], group: dict[str, str]
) -> Slider:
    low, high, step, value = ends
    return Slider(name=name, label=label, unit=unit, low=low, high=high, step=step, value=value, **group)


_CURVE = parameters()["block_curve_d"]


class BlockOnLensPanel(Panel):
    """A right lens on its block; it starts with a steep block on a flat front."""

    draws = BlockOnLensPicture
    note = (
        "An ordinary coat, no film. Pressures and shares are teaching estimates. Block curves count for "
        "index 1.530. Outlines are shapes of our own."
    )
    controls = (
        _as_there("outline", _FRAME),
        _as_there("a_mm", _FRAME),
        _as_there("b_mm", _FRAME, low=20.0),
        _number("in_mm", "Centre in", "mm", (-4.0, 8.0, 0.5, 2.0), _FRAME),
        _number("up_mm", "Centre up", "mm", (-4.0, 6.0, 0.5, 0.0), _FRAME),
        _as_there("sphere_d", _LENS, value=-6.0),
        _as_there("cylinder_d", _LENS, low=-4.0, high=4.0),
        _as_there("axis_deg", _LENS),
        _as_there("material", _LENS, value="urethane-1.53"),
        _as_there("front_curve_d", _LENS),
        _as_there("thickness_mm", _LENS, value=1.5, low=1.0, high=5.0),
        Choice(
            name="blocking_point",
            label="Blocking point",
            options=BLOCKING_POINTS,
            value="boxed centre",
            **_BLOCKING,
        ),
        Choice(name="block", label="Block", options=tuple(block_words()), value="round", **_BLOCKING),
        _number(
            "block_curve_d", "Block curve", "D", (_CURVE.low, _CURVE.high, 0.5, _CURVE.default), _BLOCKING
        ),
        _number("tip_face_mm", "Tip face radius", "mm", (30.0, 200.0, 5.0, 75.0), _BLOCKING),
        Choice(name="tip_stiffness", label="Tip rubber", options=STIFFNESSES, value="soft", **_BLOCKING),
        Choice(name="tip_mount", label="Tip mount", options=(SWIVELS, RIGID), value=SWIVELS, **_BLOCKING),
    )

    def compute(self, values: Values) -> BlockOnLens:
        """Return the lens on its block, worked.

        values: by the control's name.

        Raises LabError when no lens can be made so, or none can be cut so.
        """
        placed = {
            "monocular_pd_mm": (values["a_mm"] + _FIXED["dbl_mm"]) / 2.0 - values["in_mm"],
            "height_mm": values["b_mm"] / 2.0 + values["up_mm"],
        }
        ticket = ticket_for(values | _FIXED | placed)
        names = ("blocking_point", "block", "block_curve_d", "tip_face_mm", "tip_stiffness")
        blocking = Blocking(
            tip_swivels=values["tip_mount"] == SWIVELS, **{name: values[name] for name in names}
        )
        ticket = replace(ticket, number="from the blocking panel", blocking=blocking)
        sheet = work_eye(ticket, ticket.eyes[0])
        if sheet.cut is None:
            raise LabError(
                f"the {_FIXED['blank_diameter_mm']:g} mm blank does not reach the whole outline: give a "
                f"smaller A or B, or a smaller decentration"
            )
        return block_on_lens(sheet)

    def numbers(self, data: BlockOnLens) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: what is shown.
        """
        cut, tip = data.sheet.cut, data.tip
        return [
            ("Block clears", "yes" if cut.block_clears else "no", f"{cut.block_clearance_mm:.1f} mm of room"),
            ("Front holds", nm(cut.front_hold_nmm), f"N m, {cut.weakest_interface}"),
            ("Outline reaches", f"{cut.lens.outline_mm.max():.1f}", "mm from the chuck axis"),
            ("Front at 1.530", f"{data.front_curve_d:.2f}", "D"),
            ("Block to front gap", f"{abs(data.rim_gap_mm):.2f}", f"mm {_opens(data)}"),
            ("Pad bears on", f"{100.0 * data.bearing.area:.0f}", "% of the block"),
            ("Pad sticks by", f"{100.0 * data.bearing.turning:.0f}", "% of an even pad"),
            ("Pad rubs by", f"{100.0 * data.bearing.friction_radius:.0f}", "% of an even pad"),
            ("Clamp force", f"{cut.holding.clamp_force_n:.0f}", "N"),
            ("Lens bears", f"{cut.holding.clamp_cap_n:.0f}", "N clamped so"),
            ("Back at the tip", f"{cut.lens.faces.tilt_deg:.1f}", "degrees aslant"),
            ("Tip bears on", f"{100.0 * tip.contact_share:.0f}", "% of its face"),
            ("Tip turns by", f"{100.0 * data.tip_torque_share:.0f}", "% of an even tip"),
            ("Peak under tip", f"{tip.peak_mpa:.1f}", f"MPa, mean {tip.mean_mpa:.1f}"),
        ]

    def sentence(self, data: BlockOnLens) -> str:
        """Return where the block stands, how far the outline reaches from there, and how block and tip bear.

        data: what is shown.
        """
        blocking, cut = data.sheet.ticket.blocking, data.sheet.cut
        room = cut.block_clearance_mm
        stands = f"with {room:.1f} mm of room" if room > 0.0 else f"standing out by {-room:.1f} mm"
        return (
            f"The {blocking.block} block stands at the {blocking.blocking_point}, {stands}; the outline "
            f"reaches {cut.lens.outline_mm.max():.1f} mm, the back leans {cut.lens.faces.tilt_deg:.1f} "
            f"degrees; {gap_words(data)}; the pad bears on {100.0 * data.bearing.area:.0f} %, the tip on "
            f"{100.0 * data.tip.contact_share:.0f} %."
        )


def _opens(data: BlockOnLens) -> str:
    where = opens(round(data.rim_gap_mm, 2))
    return "" if where == "nowhere" else where
