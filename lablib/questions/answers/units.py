"""The trade's own units behind a number: other ways of writing the dioptre and the prism dioptre."""

DIOPTRE = ("dpt", "dioptre", "dioptres", "diopter", "diopters")
PRISM_DIOPTRE = (
    "prism dioptre",
    "prism dioptres",
    "prism diopter",
    "prism diopters",
    "prism D",
    "prism",
    "\N{GREEK CAPITAL LETTER DELTA}",
    "\N{INCREMENT}",
    "cm/m",
)
