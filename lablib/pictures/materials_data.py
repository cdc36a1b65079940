"""What the picture of one prescription in several materials shows."""

from dataclasses import dataclass

from lablib.optics.comparison import InMaterial
from lablib.optics.prescription import Prescription
from lablib.optics.section import Section


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MaterialsShown:
    """One lens in several materials, each cut level through its optical centre.

    rx: the power.
    lenses: in the order they stand in.
    sections: the cut through each.
    thrown_back: share of light each throws back uncoated, from 0 to 1.
    chosen: which of them is looked at closely, from 0.
    in_mm, up_mm: the point looked through, inwards and upwards from the optical centre [mm].
    prism_words: the prism there, with its base.
    rule_front_d: front curve that Vogel's rule gives [D].
    """

    rx: Prescription
    lenses: tuple[InMaterial, ...]
    sections: tuple[Section, ...]
    thrown_back: tuple[float, ...]
    chosen: int
    in_mm: float
    up_mm: float
    prism_words: str
    rule_front_d: float

    @property
    def lens(self) -> InMaterial:
        """The one looked at closely."""
        return self.lenses[self.chosen]

    @property
    def where(self) -> str:
        """The point looked through, in words."""
        parts = [
            f"{abs(away):g} mm {plus if away > 0.0 else minus}"
            for away, plus, minus in ((self.up_mm, "above", "below"), (self.in_mm, "in from", "out from"))
            if away
        ]
        return f"{', '.join(parts)} the centre" if parts else "the optical centre"
