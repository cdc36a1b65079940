"""What to mind about the grip of one cut: grip layer, film, block face and curve, key, and a named tip."""

from collections.abc import Iterator
from dataclasses import dataclass

from lablib.bench.bearing_on import fit_of
from lablib.bench.faces import engraved_curve_d
from lablib.bench.key_play import play_deg
from lablib.bench.margin import CutResult
from lablib.bench.parameter import default


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """Something to mind at the bench.

    name: a stable name, for programs.
    text: what it is and what to do, in words.
    """

    name: str
    text: str


def named_tip(result: CutResult) -> Iterator[Caution]:
    """Yield what to mind about a back tip whose face is known.

    result: of `work_cut`.
    """
    setup = result.setup
    fit = fit_of(setup, result.bench, result.holding.clamp_force_n, result.lens.faces)
    if fit is not None and fit.peak_mpa > default("tip_peak_mpa"):
        yield Caution(
            name="tip-presses-on-a-spot",
            text=f"a {setup.tip_stiffness} tip of {setup.tip_face_mm:g} mm touches this back with "
            f"{100 * fit.contact_share:.0f} % of its face and presses with about {fit.peak_mpa:.1f} MPa in "
            f"places, which may craze the coat: take a soft tip or one of the back's curve",
        )


def _layer(result: CutResult) -> Iterator[Caution]:
    if result.setup.coat == "slick" and result.setup.grip_layer == "stripped":
        yield Caution(
            name="grip-layer-stripped",
            text="the wipe has taken off the maker's grip layer, and the bare slick coat holds less: put a "
            "film on, and wipe the next lens only with what its maker allows",
        )


def _crease(result: CutResult) -> Iterator[Caution]:
    if result.setup.film and result.setup.film_wrinkle > 0.0:
        yield Caution(
            name="film-creased",
            text=f"the film has a crease under the block, with air under "
            f"{100 * result.setup.film_wrinkle:.0f} % of it: take it off and lay a new one",
        )


def _face(result: CutResult) -> Iterator[Caution]:
    if result.setup.block_face != "clean":
        advice = "clean it" if result.setup.block_face == "dirty" else "take another block"
        yield Caution(
            name=f"block-face-{result.setup.block_face}",
            text=f"the face of the block is {result.setup.block_face}, so the pad holds less on it: {advice} "
            f"before the pad goes on",
        )


def _key(result: CutResult) -> Iterator[Caution]:
    play = play_deg(result.setup.key_play_mm)
    if play >= default("line_off_deg"):
        yield Caution(
            name="block-key-worn",
            text=f"the block has {result.setup.key_play_mm:g} mm of play at its key, so the axis may be off "
            f"by {play:.1f} degrees before anything slips: take another block",
        )


def _curve(result: CutResult) -> Iterator[Caution]:
    setup, bearing = result.setup, result.holding.joints[0].bearing
    if setup.block_curve_d is not None and bearing.area < 1.0:
        faces = result.lens.faces
        front = engraved_curve_d((faces.front_flat_per_mm + faces.front_steep_per_mm) / 2.0)
        yield Caution(
            name="block-curve-off",
            text=f"a block of {setup.block_curve_d:.2f} D on a front of {front:.2f} D bears with "
            f"{100 * bearing.area:.0f} % of its pad: take a block nearer the curve of the front",
        )


GRIP_CHECKS = (_layer, _crease, _face, _key, _curve)
