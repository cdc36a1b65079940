"""Questions about layout: where the optical centre lies, and how large the blank must be."""

from lablib.questions.layout.blank import LeastBlankRule
from lablib.questions.layout.decentration import Decentration

MAKERS = (Decentration(), LeastBlankRule())
