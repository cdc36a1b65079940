"""What sliding does to the coat, as workings: heat on the face, how deep it reaches, how warm that gets."""

from lablib.bench.holding import Holding
from lablib.bench.parameter import parameters
from lablib.bench.signs import Heat
from lablib.bench.slipping import Simulation
from lablib.errors import LabError
from lablib.working import Term, Working

_SPLIT = "work splits as the torques do and grows with the distance from the axis (derived)"


def heat_workings(ran: Simulation) -> tuple[Working, ...]:
    """Return heat on the face, depth warmed and rise, at the edge of the smaller of the faces that rub.

    ran: of `simulate`.

    Raises LabError where the lens did not slide.
    """
    if ran.heat is None:
        raise LabError("nothing slid, so that nothing warmed: give a cut whose margin is below 1")
    areal, depth = _areal(ran, ran.heat), _depth(ran, ran.heat)
    volume = parameters()["heat_per_volume_j_per_mm3_k"]
    rise = Working(
        what="rise of the face where it warms most",
        symbol="rise",
        formula="q / (c_v * d)",
        terms=(
            areal.as_term(),
            Term(symbol="c_v", value=volume.default, unit=volume.unit, digits=4, meaning=volume.words),
            depth.as_term(),
        ),
        value=ran.rise_k,
        unit="K",
        digits=1,
    )
    return areal, depth, rise


def _areal(ran: Simulation, heat: Heat) -> Working:
    held: Holding = ran.result.holding
    return Working(
        what="heat on each square millimetre, at the edge of the smaller face that rubs",
        symbol="q",
        formula="E * s * (p_f + p_b) / T_0" if held.back_nmm else "E * s * p_f / T_0",
        terms=(
            Term(
                symbol="E",
                value=ran.heat_j,
                unit="J",
                digits=3,
                meaning="work of sliding",
            ),
            Term(symbol="s", value=heat.edge_mm, unit="mm", digits=1, meaning="edge of the smaller face"),
            Term(
                symbol="p_f",
                value=heat.front_n_per_mm2,
                unit="N/mm2",
                digits=4,
                meaning="front: its torque over its W",
            ),
            *(
                (
                    Term(
                        symbol="p_b",
                        value=heat.back_n_per_mm2,
                        unit="N/mm2",
                        digits=4,
                        meaning="back tip: its torque over its W",
                    ),
                )
                if held.back_nmm
                else ()
            ),
            Term(
                symbol="T_0",
                value=held.torque_nmm,
                unit="N mm",
                digits=1,
                meaning="torque held with no sideways load",
            ),
        ),
        value=heat.areal_j_per_mm2,
        unit="J/mm2",
        digits=5,
        source=_SPLIT,
    )


def _depth(ran: Simulation, heat: Heat) -> Working:
    reach = parameters()["heat_reach_mm_per_root_s"]
    return Working(
        what="depth of lens warmed in the time, at most through",
        symbol="d",
        formula="min(t_c, k_h * sqrt(s_s))",
        terms=(
            Term(
                symbol="t_c",
                value=ran.result.lens.centre_thickness_mm,
                unit="mm",
                digits=3,
                meaning="centre thickness",
            ),
            Term(symbol="k_h", value=reach.default, unit=reach.unit, digits=2, meaning=reach.words),
            Term(symbol="s_s", value=ran.sliding_s, unit="s", digits=3, meaning="time of sliding"),
        ),
        value=heat.depth_mm,
        unit="mm",
        digits=4,
    )
