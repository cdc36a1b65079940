"""Time and energy of one turn, and how warm the rim gets, as workings."""

from lablib.bench.cutting_workings import PI, speed_working
from lablib.bench.edge_heat import edge_rise_k, heat_share, heated_depth_mm
from lablib.bench.margin import CutResult, Place
from lablib.bench.parameter import parameters
from lablib.bench.turns import turns_of
from lablib.errors import LabError
from lablib.working import Term, Working


def time_workings(result: CutResult, turn: int) -> tuple[Working, ...]:
    """Return how long one turn lasts, and the work of the wheel in it.

    result: of `work_cut`; turn: counted from 1.

    Raises LabError for a turn the cut does not have.
    """
    turns = turns_of(result)
    if not 1 <= turn <= len(turns):
        raise LabError(f"turn {turn} is not one of this cut: give 1 to {len(turns)}")
    one, speed = turns[turn - 1], speed_working(result)
    seconds = Working(
        what=f"how long turn {turn} lasts",
        symbol="s",
        formula="60 / n_l * gamma_m",
        terms=(
            _lens_speed(result),
            Term(
                symbol="gamma_m",
                value=float(result.cutting.pace[turn - 1].mean()),
                digits=4,
                meaning="mean turn of the machine per turn of the contact, 1 where it never slows the lens",
            ),
        ),
        value=one.seconds,
        unit="s",
    )
    mean = one.energy_j / (one.seconds * speed.value)
    energy = Working(
        what=f"work of the wheel in turn {turn}",
        symbol="E",
        formula="F_m * v_s * s",
        terms=(
            Term(
                symbol="F_m", value=mean, unit="N", digits=3, meaning="tangential force, mean over the turn"
            ),
            speed.as_term(),
            seconds.as_term(),
        ),
        value=one.energy_j,
        unit="J",
        digits=0,
    )
    return speed, seconds, energy


def edge_workings(result: CutResult, place: Place) -> tuple[Working, ...]:
    """Return how warm the rim has become at one place when it comes round again.

    result: of `work_cut`; place: which angle of which turn.
    """
    at = place.index
    speed, depth = speed_working(result), _depth(result)
    rows = parameters()
    rim = float(result.cutting.plan.radius_mm[1:][at])
    rise = Working(
        what="rise of the rim when it comes round again",
        symbol="rise",
        formula="c * F_t * v_s * gamma / (2 * pi / 60 * n_l * rho^2 / h * w * c_v * d_h)",
        terms=(
            Term(
                symbol="c",
                value=float(heat_share(result)[place.turn - 1, 0]),
                digits=3,
                meaning="share of the work that stays in the rim",
            ),
            Term(
                symbol="F_t",
                value=float(result.cutting.force_n[at]),
                unit="N",
                digits=3,
                meaning="mean tangential force",
            ),
            speed.as_term(),
            Term(
                symbol="gamma",
                value=float(result.cutting.pace[at]),
                digits=4,
                meaning="turn of the machine per turn of the contact over the lens",
            ),
            PI,
            _lens_speed(result),
            Term(
                symbol="rho",
                value=rim,
                unit="mm",
                digits=3,
                meaning="distance of the rim from the chuck axis",
            ),
            Term(
                symbol="h",
                value=float(result.cutting.touch.support_mm[at]),
                unit="mm",
                digits=3,
                meaning="from the chuck axis to the tangent there",
            ),
            Term(
                symbol="w",
                value=max(float(result.cutting.thickness_mm[at]), depth.value),
                unit="mm",
                digits=3,
                meaning="thickness of the rim, no less than the depth warmed",
            ),
            Term(
                symbol="c_v",
                value=rows["heat_per_volume_j_per_mm3_k"].default,
                unit="J/mm3 K",
                digits=4,
                meaning=rows["heat_per_volume_j_per_mm3_k"].words,
            ),
            depth.as_term(),
        ),
        value=float(edge_rise_k(result)[at]),
        unit="K",
        digits=1,
        source="heat spread evenly over the depth it reaches in one turn (derived)",
    )
    return speed, depth, rise


def _lens_speed(result: CutResult) -> Term:
    return Term(symbol="n_l", value=result.bench.lens_speed_rpm, unit="rpm", digits=2, meaning="lens speed")


def _depth(result: CutResult) -> Working:
    reach = parameters()["heat_reach_mm_per_root_s"]
    return Working(
        what="depth warmed in one turn",
        symbol="d_h",
        formula="a * sqrt(60 / n_l)",
        terms=(
            Term(symbol="a", value=reach.default, unit=reach.unit, digits=3, meaning=reach.words),
            _lens_speed(result),
        ),
        value=heated_depth_mm(result.bench.lens_speed_rpm),
        unit="mm",
        digits=4,
    )
