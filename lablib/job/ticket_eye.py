"""One eye of a ticket file: its prescription, distances, prism and lens."""

from lablib.errors import LabError
from lablib.job.fields import Fields
from lablib.job.ticket import EyeOrder, Hold, LensOrder
from lablib.job.ticket_multifocal import read_multifocal
from lablib.optics.eye import Eye
from lablib.optics.material import Material, material
from lablib.optics.prescription import Prescription
from lablib.optics.prism import Prism
from lablib.optics.reading import read
from lablib.optics.unclear import AxisWithoutCylinder, UnclearPrescription

# In [right.lens] one key of such a pair takes the place of the other given in [lens].
_ALTERNATIVES = {
    "centre_thickness_mm": "least_edge_mm",
    "least_edge_mm": "centre_thickness_mm",
    "front_curve_d": "front_curve_measured_d",
    "front_curve_measured_d": "front_curve_d",
}


def read_eye(top: Fields, eye: Eye, lens: object) -> EyeOrder | None:
    """Read one eye's table.

    top: the ticket's top table.
    eye: whose table to read.
    lens: the shared [lens] table, as the TOML reader gave it.

    Faults go to the top's list; None where the eye has no table or cannot be made.
    """
    if (fields := top.table(eye.value)) is None:
        return None
    holds: list[Hold] = []
    read_so: list[str] = []
    rx = _prescription(fields, eye, holds, read_so)
    distance = fields.number("monocular_pd_mm", required=True)
    height = fields.number("height_mm")
    for_segment = {key: fields.number(key) for key in ("near_pd_mm", "segment_height_mm")}
    prism = _prism(fields, eye, holds)
    order = _lens(fields, lens)
    fields.done()
    if distance is None or order is None or prism is None:
        return None
    with fields.noting():
        return EyeOrder(
            eye=eye,
            prescription=rx,
            monocular_pd_mm=distance,
            height_mm=height,
            **for_segment,
            prism=prism,
            lens=order,
            holds=tuple(holds),
            read_so=tuple(read_so),
        )
    return None


def _prescription(fields: Fields, eye: Eye, holds: list[Hold], read_so: list[str]) -> Prescription | None:
    """Read one line or three numbers; what is unclear becomes a hold, what cannot be becomes a fault."""
    text = fields.text("prescription")
    sphere = fields.number("sphere_d", required=text is None)
    cylinder, axis = fields.number("cylinder_d"), fields.number("axis_deg")
    addition = fields.number("addition_d")
    with fields.noting():
        try:
            if text is not None:
                return _from_line(text, sphere, cylinder, axis, addition, read_so)
            if sphere is None:
                return None
            if axis is not None and not cylinder:
                raise AxisWithoutCylinder(f"{axis:g}", as_written=f"axis {axis:g}")
            return Prescription(
                sphere_d=sphere, cylinder_d=cylinder or 0.0, axis_deg=axis, addition_d=addition or 0.0
            )
        except UnclearPrescription as unclear:
            holds.extend(
                Hold(name=one.name, question=one.question, eye=eye) for one in (unclear, *unclear.others)
            )
    return None


def _from_line(
    text: str, sphere: object, cylinder: object, axis: object, addition: object, read_so: list[str]
) -> Prescription:
    if any(value is not None for value in (sphere, cylinder, axis)):
        raise LabError(
            f"prescription = {text!r} and its numbers are both there: "
            f"give the line, or sphere_d, cylinder_d and axis_deg"
        )
    reading = read(text)
    read_so.extend(reading.notes)
    rx = reading.prescription
    if addition is None:
        return rx
    if rx.addition_d and rx.addition_d != addition:
        raise LabError(
            f"addition_d = {addition:g} and {rx.addition_d:g} in the prescription differ: give it once"
        )
    return Prescription(
        sphere_d=rx.sphere_d, cylinder_d=rx.cylinder_d, axis_deg=rx.axis_deg, addition_d=addition
    )


def _prism(fields: Fields, eye: Eye, holds: list[Hold]) -> tuple[Prism, ...] | None:
    given = fields.take("prism", [])
    if not isinstance(given, list):
        fields.fault(f"prism = {given!r}: give a list: [{{ amount_prism_d = 1.5, base = 'in' }}]")
        return None
    found = [_one_prism(fields, item, eye, holds) for item in given]
    return tuple(prism for prism in found if prism is not None)


def _one_prism(fields: Fields, item: object, eye: Eye, holds: list[Hold]) -> Prism | None:
    if not isinstance(item, dict):
        fields.fault(f"prism = {item!r}: give amount_prism_d and base for each")
        return None
    inner = Fields(item, where=f"{fields.where}.prism", faults=fields.faults)
    amount, base = inner.number("amount_prism_d", required=True), inner.take("base")
    inner.done()
    if not amount:
        # No amount is no prism, and no prism needs no base.
        return None
    with inner.noting():
        try:
            return Prism(amount_prism_d=amount, base=base)
        except UnclearPrescription as unclear:
            holds.append(Hold(name=unclear.name, question=unclear.question, eye=eye))
    return None


def _lens(fields: Fields, shared: object) -> LensOrder | None:
    own = fields.take("lens", {})
    if not isinstance(shared, dict) or not isinstance(own, dict):
        fields.fault(f"lens = {own if isinstance(shared, dict) else shared!r}: write [lens] with its keys")
        return None
    replaced = {_ALTERNATIVES[key] for key in own if key in _ALTERNATIVES}
    merged = {key: value for key, value in shared.items() if key not in replaced} | own
    inner = Fields(merged, where=f"{fields.where}.lens" if own else "lens", faults=fields.faults)
    made_of = _material(inner)
    numbers = {key: inner.number(key) for key in _ALTERNATIVES}
    before = len(fields.faults)
    words = {key: inner.text(key) for key in ("design", "supply", "coat")}
    diameter = inner.number("blank_diameter_mm", required=True)
    multifocal = None
    with inner.noting():
        multifocal = read_multifocal(inner, words["design"])
    inner.done()
    if made_of is None or diameter is None or len(fields.faults) > before:
        return None
    given = {key: value for key, value in words.items() if value is not None}
    with inner.noting():
        return LensOrder(
            material=made_of, blank_diameter_mm=diameter, multifocal=multifocal, **numbers, **given
        )
    return None


def _material(inner: Fields) -> Material | None:
    given = inner.take("material")
    with inner.noting():
        if isinstance(given, str):
            return material(given)
        if isinstance(given, dict):
            return _by_numbers(given)
        raise LabError(f"material = {given!r}: give a name of the table, or index and density")
    return None


def _by_numbers(given: dict) -> Material:
    unknown = set(given) - {"index", "density", "abbe", "cuts_like"}
    if unknown:
        raise LabError(f"material key {sorted(unknown)[0]!r}: give index, density, abbe and cuts_like only")
    missing = [key for key in ("index", "density") if key not in given]
    if missing:
        raise LabError(f"material without {' and '.join(missing)}: give index and density, or a name")
    cuts_like = given.get("cuts_like")
    return Material(
        name="by its numbers",
        words=f"index {given.get('index')}",
        index=given.get("index"),
        density=given.get("density"),
        abbe=given.get("abbe"),
        cuts_like=material(cuts_like).name if cuts_like is not None else None,
    )
