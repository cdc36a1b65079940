"""Reading a lens with a focimeter as workings to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.focimeter_reading import SharpLine, prescription_of_readings
from lablib.optics.power_workings import transposition_workings
from lablib.optics.terms import direction_term, power_step, power_term
from lablib.working import Working

_PRACTICE = "common practice"


def readings_workings(first: SharpLine, second: SharpLine, *, zero_d: float = 0.0) -> tuple[Working, ...]:
    """Return the prescription of two readings, worked, in the form their order gives and then in the other.

    first, second, zero_d: as in `prescription_of_readings`, which also says what it raises.

    The steps are sphere, cylinder, axis, and the same in the other form; for equal readings the sphere alone.
    """
    rx = prescription_of_readings(first, second, zero_d=zero_d)
    start = power_term("P1", first.drum_d, "first reading")
    end = power_term("P2", second.drum_d, "second reading")
    zero = power_term("z", zero_d, "reading with no lens")
    sphere = power_step(
        "sphere",
        "S",
        "P1 - z" if zero_d else "P1",
        (start, zero) if zero_d else (start,),
        rx.sphere_d,
        source=_PRACTICE,
    )
    if not rx.cylinder_d:
        return (sphere,)
    line = direction_term("m2", second.line_deg, "direction of the lines sharp at the second reading")
    axis = Working(
        what="axis: along the lines that are sharp second",
        symbol="A",
        formula="m2",
        terms=(line,),
        value=rx.axis_deg,
        unit="degrees",
        digits=line.digits,
        source=_PRACTICE,
    )
    cylinder = power_step("cylinder", "C", "P2 - P1", (end, start), rx.cylinder_d, source=_PRACTICE)
    return (sphere, cylinder, axis, *transposition_workings(rx))
