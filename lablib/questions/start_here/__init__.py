"""Question makers of the first lesson, apart from those about the stack and its margin."""

from lablib.questions.start_here.distances import TwoDistances
from lablib.questions.start_here.hazards import HazardsAndGuards
from lablib.questions.start_here.inspections import FourInspections
from lablib.questions.start_here.order import StationOrder
from lablib.questions.start_here.spoilage import SpoilageCost

MAKERS = (StationOrder(), FourInspections(), HazardsAndGuards(), SpoilageCost(), TwoDistances())
