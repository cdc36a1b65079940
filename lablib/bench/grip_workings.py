"""The grip as workings: block curve and lens front, what of the pad bears, the key, and sideways creep."""

from lablib.bench.creep import creep_per_degree_mm
from lablib.bench.curve_match import (
    contact_area_share,
    contact_turning_share,
    curve_radius_mm,
    mean_squeeze_mm,
    pad_stiffness_n_per_mm3,
    rim_gap_mm,
)
from lablib.bench.cutting_workings import PI
from lablib.bench.faces import ENGRAVED_INDEX, engraved_curvature_per_mm, sphere_sag_mm
from lablib.bench.key_play import play_deg
from lablib.bench.margin import CutResult
from lablib.bench.parameter import default
from lablib.errors import LabError
from lablib.working import Term, Working

_SAGITTA = "s = r - sqrt(r^2 - y^2), exact sagitta of a sphere"
_SPRINGS = "foundation of springs, spheres nearly alike (derived)"
_NORMAL = "slip along the normal of the load ellipse (from memory)"


def gap_workings(
    *, block_curve_d: float, front_curve_d: float, away_mm: float
) -> tuple[Working, Working, Working, Working, Working]:
    """Return both radii, both sagittae and by how much block and front part.

    block_curve_d, front_curve_d: curves [D], engraved for index 1.530; away_mm: of the rim [mm].

    Raises LabError for a curve of 0, which has no radius to work with.
    """
    for thing, curve in (("block curve", block_curve_d), ("front curve", front_curve_d)):
        if not curve:
            raise LabError(f"{thing} 0 D is flat: its sagitta is 0, there is nothing to work")
    away = Term(symbol="y", value=away_mm, unit="mm", meaning="distance of the rim from the axis")
    block = curve_radius_working("block", "r_b", "F_b", block_curve_d)
    front = curve_radius_working("lens front", "r_f", "F_f", front_curve_d)
    sags = (
        _sagitta("block", "s_b", block, away, block_curve_d),
        _sagitta("lens front", "s_f", front, away, front_curve_d),
    )
    gap = Working(
        what="by how much block and front part between axis and rim",
        symbol="g",
        formula="s_b - s_f",
        terms=tuple(sag.as_term() for sag in sags),
        value=rim_gap_mm(block_curve_d=block_curve_d, front_curve_d=front_curve_d, away_mm=away_mm),
        unit="mm",
        digits=3,
    )
    return block, front, *sags, gap


def curve_radius_working(what: str, symbol: str, power: str, curve_d: float, *, digits: int = 4) -> Working:
    """Return the radius of an engraved curve.

    what: whose curve; symbol: of the radius; power: symbol of the curve; curve_d: for index 1.530 [D].
    digits: shown of the radius.
    """
    return Working(
        what=f"radius of the {what}",
        symbol=symbol,
        formula=f"1000 * (n - 1) / {power}",
        terms=(
            Term(symbol="n", value=ENGRAVED_INDEX, digits=3, meaning="index the curves are engraved for"),
            Term(symbol=power, value=curve_d, unit="D", meaning=f"curve of the {what}"),
        ),
        value=curve_radius_mm(curve_d),
        unit="mm",
        digits=digits,
    )


def _sagitta(what: str, symbol: str, radius: Working, away: Term, curve_d: float) -> Working:
    hollow = curve_d < 0.0
    root = f"sqrt({radius.symbol}^2 - y^2)"
    return Working(
        what=f"sagitta of the {what}",
        symbol=symbol,
        formula=f"{radius.symbol} + {root}" if hollow else f"{radius.symbol} - {root}",
        terms=(radius.as_term(), away),
        value=float(sphere_sag_mm(engraved_curvature_per_mm(curve_d), away.value)),
        unit="mm",
        digits=3,
        source=_SAGITTA,
    )


def contact_workings(*, gap_mm: float, force_n: float, area_mm2: float) -> tuple[Working, Working, Working]:
    """Return how far an even pad would be squeezed, and what of it bears when block and front differ.

    gap_mm: from `rim_gap_mm` [mm], not 0; force_n: the block is pressed on with [N]; area_mm2: of a round
        block [mm2].

    Raises LabError for a gap of 0: then all of the pad bears.
    """
    if not gap_mm:
        raise LabError("gap 0 mm: block and front are of one curve and all of the pad bears")
    squeeze = Working(
        what="how far an even pad would be squeezed",
        symbol="m",
        formula="P / (A * k)",
        terms=(
            Term(symbol="P", value=force_n, unit="N", digits=1, meaning="force pressed on with"),
            Term(symbol="A", value=area_mm2, unit="mm2", digits=2, meaning="area of the block's face"),
            Term(symbol="k", value=pad_stiffness_n_per_mm3(), unit="N/mm3", meaning="stiffness of the pad"),
        ),
        value=mean_squeeze_mm(force_n, area_mm2),
        unit="mm",
        digits=4,
    )
    share = contact_area_share(rim_gap_mm=gap_mm, mean_squeeze_mm=squeeze.value)
    area = Working(
        what="share of the pad's area that bears",
        symbol="u_A",
        formula="sqrt(min(1, 2 * m / abs(g)))",
        terms=(
            squeeze.as_term(),
            Term(symbol="g", value=gap_mm, unit="mm", digits=4, meaning="gap between axis and rim"),
        ),
        value=share,
        digits=4,
        source=_SPRINGS,
    )
    on_rim = gap_mm > 0.0
    turning = Working(
        what=f"share of W that bears, {'on the rim' if on_rim else 'in the middle'}",
        symbol="u_W",
        formula="1 - (1 - u_A)^1.5" if on_rim else "u_A^1.5",
        terms=(area.as_term(),),
        value=contact_turning_share(rim_gap_mm=gap_mm, mean_squeeze_mm=squeeze.value),
        digits=3,
        source=_SPRINGS,
    )
    return squeeze, area, turning


def key_working(play_mm: float, *, key_radius_mm: float | None = None) -> Working:
    """Return the step from the play of a block key to degrees.

    play_mm, key_radius_mm: as in `lablib.bench.key_play.play_deg` [mm].
    """
    radius = default("key_radius_mm") if key_radius_mm is None else key_radius_mm
    return Working(
        what="how far the block turns in its chuck",
        symbol="theta",
        formula="atan(p / r_k)",
        terms=(
            Term(symbol="p", value=play_mm, unit="mm", digits=3, meaning="play at the key"),
            Term(symbol="r_k", value=radius, unit="mm", meaning="distance of the key from the axis"),
        ),
        value=play_deg(play_mm, key_radius_mm=radius),
        unit="degrees",
        digits=2,
    )


def creep_working(result: CutResult) -> Working:
    """Return the step to the sideways creep for a degree of slip where the margin is least.

    result: of `work_cut`.
    """
    held, at = result.holding, result.least.index
    return Working(
        what="sideways creep for a degree of slip",
        symbol="k_s",
        formula="c_F * (T_0 / F_0)^2 / abs(arm) * pi / 180",
        terms=(
            Term(symbol="c_F", value=result.cutting.sideways, digits=4, meaning="whole force / tangential"),
            Term(symbol="T_0", value=held.torque_nmm, unit="N mm", digits=1, meaning="torque held alone"),
            Term(symbol="F_0", value=held.force_n, unit="N", digits=2, meaning="sideways load held alone"),
            Term(
                symbol="arm",
                value=float(result.cutting.arm_mm[at]),
                unit="mm",
                digits=3,
                meaning="lever arm of the tangential force",
            ),
            PI,
        ),
        value=creep_per_degree_mm(result, result.least),
        unit="mm per degree",
        digits=4,
        source=_NORMAL,
    )
