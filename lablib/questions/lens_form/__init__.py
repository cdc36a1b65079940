"""Questions about lens form and thickness: caps, edges, centres, and where a lens comes from."""

from lablib.questions.lens_form.axis import ThickAxis
from lablib.questions.lens_form.edge import TemporalEdge
from lablib.questions.lens_form.place import ThickestEdgePlace
from lablib.questions.lens_form.plus import PlusCentre
from lablib.questions.lens_form.supply import StockOrSurfaced
from lablib.questions.lens_form.surfaces import FrontCurveRule, Sagitta

MAKERS = (
    Sagitta(),
    FrontCurveRule(),
    TemporalEdge(),
    ThickestEdgePlace(),
    ThickAxis(),
    PlusCentre(),
    StockOrSurfaced(),
)
