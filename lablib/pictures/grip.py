"""The grip of one lens: its parts from the side, and what each joint carries before it slips."""

from matplotlib.colors import to_rgba
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from lablib.pictures.captions import (
    HEADING_PT,
    KEY_WORDS_PX,
    KeyWhereDrawn,
    moving_words,
    write_still,
)
from lablib.pictures.grip_data import Grip, JointShares
from lablib.pictures.grip_section import GRIP_LAYER, SLIPS, SOIL, GripSection
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import HOLDS, INK, JOINT, QUIET_INK, TOO_SMALL, WEAKEST_JOINT, Look
from lablib.pictures.window import add_axes, shown_px

# One scale for every grip, so that a stronger joint looks stronger.
FULL_NMM, _BAR_PX = 2200.0, 232.0
_NAME_X, _BAR_X, _HALF_BAR, _AFTER = 300.0, 388.0, 7.0, 7.0
# Heights of the lines at the right [shown px].
_BLOCK_Y, _CORE_Y, _FILM_Y, _LENS_Y, _TIP_Y, _TOGETHER_Y = 438, 392, 346, 300, 216, 158
_STATE_BELOW = 18.0


class JointRow:
    """One joint at the right: its name, its torque in two parts, what it is like, a line to where it lies.

    picture: the picture it is part of, with its axes; y: how high it stands [shown px].
    """

    def __init__(self, picture: "GripPicture", y: float) -> None:
        axes, moving = picture.axes, picture.moving
        self.y = y
        edge = {"edgecolor": HOLDS.colour, "linewidth": 0.8}
        self.sticks, self.rubs = (
            moving(
                axes.add_patch(Rectangle((_BAR_X, y - _HALF_BAR), 0.0, 2.0 * _HALF_BAR, hatch=hatch, **edge))
            )
            for hatch in (None, "////")
        )
        self.name, self.words = (moving_words(picture, axes, (x, y), color=INK) for x in (_NAME_X, _BAR_X))
        self.state = moving_words(picture, axes, (_BAR_X, y - _STATE_BELOW), color=QUIET_INK)
        self.lead = moving(Line2D([], [], color=QUIET_INK, linewidth=0.7, zorder=1))
        axes.add_line(self.lead)

    def update(self, joint: JointShares, *, from_y: float, from_x: float, weakest: bool) -> None:
        """Set what it shows.

        joint: which; weakest: whether it slips first.
        from_x, from_y: where it lies in the drawing [shown px].
        """
        look = WEAKEST_JOINT if weakest else JOINT
        at = _BAR_X
        for bar, torque in ((self.sticks, joint.sticks_nmm), (self.rubs, joint.rubs_nmm)):
            long = torque * _BAR_PX / FULL_NMM
            bar.set_bounds(at, self.y - _HALF_BAR, long, 2.0 * _HALF_BAR)
            bar.set(facecolor=_face(look, bar), edgecolor=INK if weakest else HOLDS.colour)
            bar.set(linewidth=1.6 if weakest else 0.8, visible=long > 0.0)
            at += long
        self.name.set_text(joint.name)
        self.words.set_text(f"{nm(joint.torque_nmm)}{'  ◀ weakest' if weakest else ''}")
        self.words.set_position((at + _AFTER, self.y))
        self.state.set_text(joint.state)
        self.lead.set_data([from_x, _NAME_X - 6.0], [from_y, self.y])
        self.lead.set(color=TOO_SMALL.colour if weakest else QUIET_INK, linewidth=1.6 if weakest else 0.7)
        self.lead.set_visible(True)

    def clear(self, words: str) -> None:
        """Show that there is no such joint.

        words: in place of its name.
        """
        for part in (self.sticks, self.rubs, self.lead):
            part.set_visible(False)
        self.name.set_text(words)
        for label in (self.words, self.state):
            label.set_text("")


class GripPicture(KeptPicture):
    """Block, pad, film, coat, lens, tape and back tip from the side, and each joint's torque beside it."""

    width_px = 720
    height_px = 506

    def build(self) -> None:
        """Add the section, a row for each joint, the sums and the key."""
        self.section = GripSection(self, (0.0, 144.0, 292.0, 482.0))
        self.axes = add_axes(self, (0.0, 0.0, 720.0, 506.0))
        self.axes.set_axis_off()
        self.axes.patch.set_visible(False)
        set_limits(self.axes, x=(0.0, 720.0), y=(0.0, 506.0))
        self.block, self.core, self.film, self.lens, self.tip = (
            JointRow(self, y) for y in (_BLOCK_Y, _CORE_Y, _FILM_Y, _LENS_Y, _TIP_Y)
        )
        self.together = moving_words(self, self.axes, (_BAR_X, _TOGETHER_Y - _STATE_BELOW), color=INK)
        self.play, self.clamp = (moving_words(self, self.axes, (8.0, y), color=INK) for y in (110.0, 132.0))
        self.sum = [
            self.moving(self.axes.add_patch(Rectangle((0.0, 0.0), 0.0, 0.0, hatch=hatch, linewidth=1.2)))
            for hatch in (None, "////")
        ]
        write_still(self, (8, 492), "The grip from the side", size=HEADING_PT)
        write_still(self, (_NAME_X, 492), "Torque before it slips [N m]", size=HEADING_PT)
        write_still(self, (_NAME_X, 466), "front stack, in series: only the weakest counts", color=QUIET_INK)
        write_still(self, (_NAME_X, 246), "back tip, beside it in parallel: added", color=QUIET_INK)
        write_still(self, (_NAME_X, _TOGETHER_Y), "together")
        self._add_key()

    def _add_key(self) -> None:
        for x, hatch, words in (
            (10, None, "sticks: adhesive"),
            (176, "////", "rubs: friction under the clamp"),
        ):
            face = to_rgba(JOINT.colour, JOINT.opacity)
            style = {"facecolor": face, "edgecolor": HOLDS.colour, "linewidth": 0.8, "hatch": hatch}
            self.figure.add_artist(Rectangle((x, 52.0), 24, 12, transform=shown_px(self), **style))
            write_still(self, (x + KEY_WORDS_PX, 58), words, color=QUIET_INK)
        for x, look, words in ((420, SLIPS, "weakest joint"), (556, GRIP_LAYER, "maker's grip layer")):
            line = Line2D([x, x + 24], [58, 58], transform=shown_px(self), **look.line())
            self.figure.add_artist(line)
            write_still(self, (x + KEY_WORDS_PX, 58), words, color=QUIET_INK)
        self.soil = KeyWhereDrawn(self, self.axes, (10, 30, SOIL, "what lies on the lens"))
        write_still(self, (196, 30), "widths to scale, heights not; curves left out", color=QUIET_INK)

    def update(self, data: Grip) -> None:
        """Draw one grip.

        data: what to draw.
        """
        self.section.update(data)
        rows = (
            (self.block, data.block),
            (self.core, data.core),
            (self.film, data.film),
            (self.lens, data.lens),
        )
        for row, joint in rows:
            if joint is None:
                row.clear("no film")
                continue
            y = self.section.joint_y(data, joint)
            row.update(joint, from_x=self._edge(joint, data), from_y=y, weakest=joint is data.weakest)
        back = self.section.back_y(data)
        self.tip.update(data.tip, from_x=self.section.tip_right_x, from_y=back, weakest=False)
        self._sum(data)
        self.soil.show(data.setup.skin != "clean")

    def _edge(self, joint: JointShares, grip: Grip) -> float:
        """Where a joint ends at the right: film and coat reach farther out than the pad."""
        if joint is grip.lens or joint is grip.film:
            return self.section.right_x
        return self.section.block_right_x

    def _sum(self, grip: Grip) -> None:
        held = grip.held
        front, back = held.front_nmm, held.back_nmm
        at = _BAR_X
        for bar, torque, look in zip(self.sum, (front, back), (WEAKEST_JOINT, JOINT), strict=True):
            long = torque * _BAR_PX / FULL_NMM
            bar.set_bounds(at, _TOGETHER_Y - _HALF_BAR, long, 2.0 * _HALF_BAR)
            bar.set(facecolor=to_rgba(look.colour, look.opacity), edgecolor=INK)
            at += long
        self.together.set_text(f"{nm(front)} of {grip.weakest.name} + {nm(back)} = {nm(held.torque_nmm)}")
        self.clamp.set_text(f"clamp {held.clamp_force_n:.0f} N; this lens bears {held.clamp_cap_n:.0f} N")
        self.play.set_text(_play(grip))


def _play(grip: Grip) -> str:
    if not grip.setup.key_play_mm:
        return "key without play"
    return f"key with {grip.setup.key_play_mm:.2f} mm play: axis off by up to {grip.play_deg:.1f}°"


def _face(look: Look, bar: Rectangle) -> tuple[float, float, float, float]:
    return to_rgba(look.colour, look.opacity if bar.get_hatch() is None else look.opacity / 2.0)


def nm(torque_nmm: float) -> str:
    """Return a torque as it is written [N m].

    torque_nmm: [N mm].
    """
    return f"{torque_nmm / 1000.0:.2f}"
