"""All question makers there are, by name."""

from collections.abc import Mapping
from types import MappingProxyType

from lablib.errors import LabError
from lablib.questions import (
    bench_care,
    bench_stack,
    blocking,
    calibration,
    cutting,
    edges,
    layout,
    lens_form,
    material,
    multifocals,
    power,
    prescription,
    prism,
    slip,
    start_here,
    surfaces,
    ticket_check,
    wearing,
)
from lablib.study.maker import Maker

_TOPICS = (
    start_here,
    bench_stack,
    prescription,
    ticket_check,
    power,
    surfaces,
    layout,
    prism,
    lens_form,
    multifocals,
    material,
    wearing,
    blocking,
    cutting,
    slip,
    edges,
    bench_care,
    calibration,
)
MAKERS: Mapping[str, Maker] = MappingProxyType(
    {maker.name: maker for topic in _TOPICS for maker in topic.MAKERS}
)


def maker(name: str) -> Maker:
    """Return the maker of a name.

    Raises LabError with the names there are.
    """
    if name not in MAKERS:
        raise LabError(f"question maker {name!r} is not known: give one of {', '.join(MAKERS)}")
    return MAKERS[name]
