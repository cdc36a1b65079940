"""Questions about surfaces: the lens measure, warpage, back vertex power, toric forms, the front curve."""

from lablib.questions.surfaces.back_vertex import BackVertexPower
from lablib.questions.surfaces.base_rules import BaseCurveTwoRules
from lablib.questions.surfaces.lens_measure import LensMeasure
from lablib.questions.surfaces.toric_base import ToricBase
from lablib.questions.surfaces.warpage import Warpage

MAKERS = (LensMeasure(), Warpage(), BackVertexPower(), ToricBase(), BaseCurveTwoRules())
