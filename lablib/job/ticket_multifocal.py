"""The multifocal part of a ticket's lens table, read and written."""

from lablib.errors import LabError, require_one_of
from lablib.job.fields import Fields
from lablib.job.multifocal_order import CHART_KEYS, DESIGNS, PROGRESSIVE, Multifocal, SegmentOrder
from lablib.optics.progressive import ProgressiveDesign, progressive, progressive_names
from lablib.optics.segment import STYLES, Segment, segment, segment_names, usual_segment

_SIZES = ("segment_width_mm", "segment_depth_mm", "segment_centre_below_top_mm", "segment_top_rise_mm")
# Without these a chart of its own says too little to lay a lens out.
_NEEDED = (
    "engraving_below_cross_mm",
    "distance_circle_above_cross_mm",
    "near_circle_below_cross_mm",
    "near_inset_mm",
    "least_fitting_height_mm",
)


def read_multifocal(fields: Fields, design: str | None) -> Multifocal | None:
    """Read the keys that a design has, and no others, so that those of another are unknown.

    fields: the lens table; design: as it is written, None for single vision.

    None too where a key cannot be read, which is a fault of its own.

    Raises LabError for a design that is not known, and for what does not go together.
    """
    if design is not None:
        require_one_of("design", design, DESIGNS)
    if design in STYLES:
        return _segment_order(fields, design)
    return _chart(fields) if design == PROGRESSIVE else None


def _segment_order(fields: Fields, style: str) -> SegmentOrder | None:
    before = len(fields.faults)
    name = fields.text("segment")
    sizes = {key: fields.number(key) for key in _SIZES}
    blank = {key: fields.number(f"blank_segment_{key}_mm") for key in ("inset", "drop")}
    given = {key.removeprefix("segment_"): value for key, value in sizes.items() if value is not None}
    if len(fields.faults) > before:
        return None
    return SegmentOrder(
        segment=_segment(style, name, given),
        blank_inset_mm=blank["inset"],
        blank_drop_mm=blank["drop"],
    )


def _segment(style: str, name: str | None, sizes: dict[str, float]) -> Segment:
    if name is not None:
        if sizes:
            raise LabError(f"segment = {name!r} and sizes of its own are both there: give one of the two")
        return segment(name)
    if set(sizes) == {"width_mm"}:
        return usual_segment(style, sizes["width_mm"])
    if not {"width_mm", "depth_mm", "centre_below_top_mm"} <= set(sizes):
        raise LabError(
            f"design = {style!r} without its segment: give segment = a name of the table, or "
            "segment_width_mm with segment_depth_mm and segment_centre_below_top_mm"
        )
    return Segment(style=style, **sizes)


def _chart(fields: Fields) -> ProgressiveDesign | None:
    before = len(fields.faults)
    name = fields.text("chart")
    own = {key: fields.number(key) for key in CHART_KEYS}
    own["addition_on"] = fields.text("addition_on")
    given = {key: value for key, value in own.items() if value is not None}
    if len(fields.faults) > before:
        return None
    if name is None:
        missing = [key for key in _NEEDED if key not in given]
        if missing:
            raise LabError(
                f"design = 'progressive' without {missing[0]}: give it as the maker's chart has it, or "
                f"chart = one of {', '.join(progressive_names())}"
            )
        return ProgressiveDesign(**given)
    if given:
        raise LabError(f"chart = {name!r} and numbers of its own are both there: give one of the two")
    return progressive(name)


def multifocal_table(multifocal: Multifocal | None) -> dict[str, object]:
    """Return the keys that give an equal multifocal when they are read.

    multifocal: of a lens; None for single vision, which has no such keys.
    """
    if multifocal is None:
        return {}
    if isinstance(multifocal, SegmentOrder):
        return _segment_table(multifocal.segment) | {
            "blank_segment_inset_mm": multifocal.blank_inset_mm,
            "blank_segment_drop_mm": multifocal.blank_drop_mm,
        }
    for name in progressive_names():
        if progressive(name) == multifocal:
            return {"chart": name}
    return {key: getattr(multifocal, key) for key in (*CHART_KEYS, "addition_on")}


def _segment_table(ordered: Segment) -> dict[str, object]:
    for name in segment_names():
        if segment(name) == ordered:
            return {"segment": name}
    return {key: getattr(ordered, key.removeprefix("segment_")) for key in _SIZES}
