"""What questions about check values share: a compensated lens in three columns, and how it is told."""

from dataclasses import replace

from lablib.job.check_values import CheckedLens
from lablib.optics.power import wrapped_axis_deg
from lablib.optics.prescription import Prescription
from lablib.optics.terms import direction_term, power_term
from lablib.optics.tilt import Tilt, compensated
from lablib.study.draws import Draws
from lablib.working import Term

# The columns: a mark behind each symbol, and what it holds.
COLUMNS = (("o", "as ordered"), ("c", "in the maker's check value"), ("r", "as the focimeter reads"))
INDEX = 1.6


def draw_checked(draws: Draws, *, near: str = "check value") -> CheckedLens:
    """Return a compensated lens whose reading lies near its check value, its order, or neither.

    draws: to draw from.
    near: "check value", "order" or "nothing".
    """
    order = Prescription(
        sphere_d=draws.step(3.5, 7.0, 0.25) * draws.one_of((-1.0, 1.0)),
        cylinder_d=-draws.step(0.75, 2.0, 0.25),
        axis_deg=draws.step(10.0, 170.0, 5.0),
    )
    tilt = Tilt(pantoscopic_deg=draws.step(6.0, 12.0, 1.0), wrap_deg=draws.step(12.0, 20.0, 1.0))
    check_value = as_written(compensated(order, tilt=tilt, index=INDEX))
    about = order if near == "order" else check_value
    off = draws.one_of((-0.2, 0.2)) if near == "nothing" else draws.step(-0.08, 0.08, 0.01)
    reading = replace(
        about,
        sphere_d=round(about.sphere_d + off, 2),
        cylinder_d=round(about.cylinder_d + draws.step(-0.03, 0.03, 0.01), 2),
        axis_deg=wrapped_axis_deg(about.axis_deg + draws.step(-1.0, 1.0, 1.0)),
    )
    return CheckedLens(order=order, check_value=check_value, reading=reading, progressive=draws.whole(2) == 0)


def as_written(rx: Prescription) -> Prescription:
    """Return a prescription to the hundredth of a dioptre and the whole degree.

    rx: in minus form.
    """
    return Prescription(
        sphere_d=round(rx.sphere_d, 2),
        cylinder_d=round(rx.cylinder_d, 2),
        axis_deg=wrapped_axis_deg(round(rx.axis_deg)) if round(rx.cylinder_d, 2) else None,
    )


def columns(lens: CheckedLens) -> tuple[Term, ...]:
    """Return sphere, cylinder and axis of all three columns as terms.

    lens: as inspected.
    """
    return tuple(
        term
        for (mark, whose), rx in zip(COLUMNS, (lens.order, lens.check_value, lens.reading), strict=True)
        for term in (
            power_term(f"S_{mark}", rx.sphere_d, f"sphere {whose}"),
            power_term(f"C_{mark}", rx.cylinder_d, f"cylinder {whose}"),
            direction_term(f"A_{mark}", rx.axis_deg, f"axis {whose}"),
        )
    )


def kind_of_lens(lens: CheckedLens) -> str:
    """Return what the lens is, in words.

    lens: as inspected.
    """
    return "progressive" if lens.progressive else "single vision lens"
