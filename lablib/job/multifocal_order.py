"""What a multifocal lens has beyond a single vision one: a segment and its place on the blank, or a chart."""

from dataclasses import dataclass, fields

from lablib.errors import LabError, require_one_of
from lablib.optics.limits import require_in_limits
from lablib.optics.progressive import ProgressiveDesign
from lablib.optics.segment import STYLES, Segment
from lablib.optics.segment_blank import SegmentBlank

SINGLE_VISION, PROGRESSIVE = "single vision", "progressive"
DESIGNS = (SINGLE_VISION, *STYLES, PROGRESSIVE)
# Every number of a chart is a key of the ticket.
CHART_KEYS = tuple(one.name for one in fields(ProgressiveDesign) if one.name not in ("words", "addition_on"))


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentOrder:
    """A segment as ordered.

    segment: the segment.
    blank_inset_mm: middle of the blank's segment inwards of the blank's centre [mm]; None: not said.
    blank_drop_mm: its top below the blank's centre [mm]; None: not said.

    Raises LabError where only one of the two is given, or for a number no blank has.
    """

    segment: Segment
    blank_inset_mm: float | None = None
    blank_drop_mm: float | None = None

    def __post_init__(self) -> None:
        if (self.blank_inset_mm is None) != (self.blank_drop_mm is None):
            raise LabError(
                "blank_segment_inset_mm and blank_segment_drop_mm: one of the two is missing: give both as "
                "the blank's chart has them, or neither"
            )
        for name in ("inset", "drop"):
            value = getattr(self, f"blank_{name}_mm")
            if value is not None:
                key = f"blank_segment_{name}_mm"
                require_in_limits(key, value, key)

    def blank(self, diameter_mm: float) -> SegmentBlank | None:
        """Return the blank with its segment; None where it is not said where that lies.

        diameter_mm: of the blank [mm].
        """
        if self.blank_inset_mm is None:
            return None
        return SegmentBlank(diameter_mm=diameter_mm, inset_mm=self.blank_inset_mm, drop_mm=self.blank_drop_mm)


Multifocal = SegmentOrder | ProgressiveDesign


def require_design(design: object, multifocal: Multifocal | None) -> None:
    """Refuse a design that does not go with the rest of the lens.

    design: one of `DESIGNS`; multifocal: what the lens has beyond a single vision one.

    Raises LabError for a word that is not known, or a design without its segment or chart, or with another's.
    """
    require_one_of("design", design, DESIGNS)
    if isinstance(multifocal, SegmentOrder):
        wanted = multifocal.segment.style
    else:
        wanted = SINGLE_VISION if multifocal is None else PROGRESSIVE
    if design != wanted:
        having = {None: "no segment and no chart", PROGRESSIVE: "a progressive chart"}
        has = having.get(multifocal and wanted, f"a segment of the style {wanted}")
        raise LabError(f"design {design!r} with {has}: give the lens what its design needs, and no more")
