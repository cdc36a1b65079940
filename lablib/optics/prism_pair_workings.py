"""The prism of a pair as workings to follow by hand: split, put together, centres off, reading, thinning.

Symbols end in _R for the right eye and _L for the left.
Every value is the numeric function's; only the steps are written here.
"""

from dataclasses import replace

from lablib.optics.eye import Eye
from lablib.optics.near_imbalance import prism_at_reading_point, slab_off
from lablib.optics.power_workings import prism_at_workings
from lablib.optics.practice import source_of, usual_or
from lablib.optics.prescription import Prescription
from lablib.optics.prism_pair import (
    PrismPair,
    inwards_of_centre_mm,
    prism_of_centres,
    split,
    thinning_prism,
)
from lablib.optics.terms import distance_term, in_full, marked, power_term, prism_step, prism_term
from lablib.working import Term, Working

_PRACTICE = "common practice"
_MARK = {Eye.RIGHT: "_R", Eye.LEFT: "_L"}


def split_workings(
    *, in_prism_d: float = 0.0, up_prism_d: float = 0.0, right_share: float = 0.5
) -> tuple[Working, ...]:
    """Return a prism split between the eyes, worked; a direction without prism has no steps.

    in_prism_d, up_prism_d, right_share: as in `split`, which also says what it raises.
    """
    pair = split(in_prism_d=in_prism_d, up_prism_d=up_prism_d, right_share=right_share)
    share = in_full("k", right_share, "", meaning="share of the right eye")
    inwards = prism_term("P_in", in_prism_d, "base in of both eyes together (minus is base out)")
    upwards = prism_term("P_up", up_prism_d, "base up of the right eye over the left")
    steps = ()
    if in_prism_d:
        steps += (
            _step(_of("in", Eye.RIGHT), "P_in_R", "k * P_in", (share, inwards), pair.right[0]),
            _step(_of("in", Eye.LEFT), "P_in_L", "(1 - k) * P_in", (share, inwards), pair.left[0]),
        )
    if up_prism_d:
        steps += (
            _step(_of("up", Eye.RIGHT), "P_up_R", "k * P_up", (share, upwards), pair.right[1]),
            _step(_of("up", Eye.LEFT), "P_up_L", "-(1 - k) * P_up", (share, upwards), pair.left[1]),
        )
    return steps


def between_workings(pair: PrismPair) -> tuple[Working, Working]:
    """Return what counts between the eyes, worked: the sum of the parts base in, the difference of base up.

    pair: the prism of both eyes.
    """
    inwards, upwards = pair.between
    return (
        _step(
            "base in of both eyes together (minus is base out)",
            "P_in",
            "P_in_R + P_in_L",
            (_term(pair, Eye.RIGHT, "in"), _term(pair, Eye.LEFT, "in")),
            inwards,
        ),
        _step(
            "base up of the right eye over the left (minus: the left over the right)",
            "P_up",
            "P_up_R - P_up_L",
            (_term(pair, Eye.RIGHT, "up"), _term(pair, Eye.LEFT, "up")),
            upwards,
        ),
    )


def centres_workings(
    right: Prescription,
    left: Prescription,
    *,
    right_centre_mm: float,
    left_centre_mm: float,
    right_pd_mm: float,
    left_pd_mm: float,
) -> tuple[Working, ...]:
    """Return the prism of optical centres off their place, worked: each eye, then what counts between them.

    right, left, right_centre_mm, left_centre_mm, right_pd_mm, left_pd_mm: as in `prism_of_centres`, which
        also says what it raises.
    """
    pair = prism_of_centres(
        right,
        left,
        right_centre_mm=right_centre_mm,
        left_centre_mm=left_centre_mm,
        right_pd_mm=right_pd_mm,
        left_pd_mm=left_pd_mm,
    )
    steps = ()
    for eye, rx, centre, pd in (
        (Eye.RIGHT, right, right_centre_mm, right_pd_mm),
        (Eye.LEFT, left, left_centre_mm, left_pd_mm),
    ):
        inwards = _inwards(centre, pd)
        prisms = prism_at_workings(rx, eye=eye, in_mm=inwards.value, up_mm=0.0)
        steps += _of_eye((inwards, *prisms), eye)
    return (*steps, *_between_of(pair, steps))


def near_imbalance_workings(
    right: Prescription,
    left: Prescription,
    *,
    drop_mm: float,
    right_inset_mm: float = 0.0,
    left_inset_mm: float = 0.0,
) -> tuple[Working, ...]:
    """Return the vertical imbalance at the reading point, worked; the last step is the slab-off amount.

    right, left, drop_mm, right_inset_mm, left_inset_mm: as in `prism_at_reading_point`, which also says
        what it raises. Whether there is slab-off the prescriber decides.
    """
    insets = {Eye.RIGHT: right_inset_mm, Eye.LEFT: left_inset_mm}
    wanted = {"drop_mm": drop_mm, "right_inset_mm": right_inset_mm, "left_inset_mm": left_inset_mm}
    pair = prism_at_reading_point(right, left, **wanted)
    steps = ()
    for eye, rx in ((Eye.RIGHT, right), (Eye.LEFT, left)):
        steps += _of_eye(prism_at_workings(rx, eye=eye, in_mm=insets[eye], up_mm=-drop_mm), eye)
    *_, upwards = _between_of(pair, steps)
    amount = _step(
        "vertical imbalance, which slab-off would take away if it is ordered",
        "V",
        "abs(P_up)",
        (upwards.as_term(),),
        slab_off(right, left, **wanted).amount_prism_d,
    )
    return (*steps, upwards, amount)


def thinning_prism_working(addition_d: float, *, share: float | None = None) -> Working:
    """Return the thinning prism of each eye, worked; it is base down alike in both.

    addition_d, share: as in `thinning_prism`, which also says what it raises.
    """
    pair = thinning_prism(addition_d, share=share)
    part = usual_or("thinning_share", "thinning prism for each dioptre of addition", share)
    return prism_step(
        "thinning prism in each eye, base down",
        "P",
        "p * Add",
        (
            in_full("p", part, "", meaning="prism dioptres for each dioptre of addition"),
            power_term("Add", addition_d, "addition"),
        ),
        -pair.right_up_prism_d + 0.0,
        source=source_of("thinning_share") if share is None else _PRACTICE,
    )


def _inwards(centre_mm: float, pd_mm: float) -> Working:
    terms = (
        distance_term("c", centre_mm, "middle of the bridge to the optical centre"),
        distance_term("PD", pd_mm, "monocular distance"),
    )
    return Working(
        what="how far inwards of the optical centre the eye looks through (minus: outwards)",
        symbol="in",
        formula="c - PD",
        terms=terms,
        value=inwards_of_centre_mm(centre_mm=centre_mm, pd_mm=pd_mm),
        unit="mm",
        digits=max(term.digits for term in terms),
        source=_PRACTICE,
    )


def _of_eye(steps: tuple[Working, ...], eye: Eye) -> tuple[Working, ...]:
    return marked(steps, _MARK[eye], whose=f"{eye} eye")


def _between_of(pair: PrismPair, steps: tuple[Working, ...]) -> tuple[Working, Working]:
    """What counts between the eyes, taken from the steps that came before."""
    found = {step.symbol: step.as_term() for step in steps}
    return tuple(
        replace(step, terms=tuple(found[term.symbol] for term in step.terms))
        for step in between_workings(pair)
    )


def _term(pair: PrismPair, eye: Eye, way: str) -> Term:
    value = getattr(pair, str(eye))[("in", "up").index(way)]
    return prism_term(f"P_{way}{_MARK[eye]}", value, _of(way, eye))


def _of(way: str, eye: Eye) -> str:
    other = {"in": "out", "up": "down"}[way]
    return f"{eye} eye, base {way} (minus is base {other})"


def _step(what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float) -> Working:
    return prism_step(what, symbol, formula, terms, value, source=_PRACTICE)
