"""Question makers of the first lesson, apart from those about the stack and its margin."""

from lablib.questions.start_here_distances import TwoDistances
from lablib.questions.start_here_hazards import HazardsAndGuards
from lablib.questions.start_here_inspections import FourInspections
from lablib.questions.start_here_order import StationOrder
from lablib.questions.start_here_spoilage import SpoilageCost

MAKERS = (StationOrder(), FourInspections(), HazardsAndGuards(), SpoilageCost(), TwoDistances())
