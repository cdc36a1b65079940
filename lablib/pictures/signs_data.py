"""What the picture of four lenses side by side shows: each after its cut, with what tells that it turned."""

from dataclasses import dataclass

from lablib.pictures.turned_lens_data import SeenLens


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SignedLens:
    """One lens after its cut.

    number: which of the four, from 1; words: the job in a few words.
    is_changed: whether what was done otherwise makes a difference to it.
    margin: of its cut, the least over all turns.
    sign: the one that tells most, or "none"; signs: all that it shows.
    seen: the lens on its block.
    turned_deg: how far it turned in all [degrees].
    rise_k: by how much the sliding face warmed [K].
    """

    number: int
    words: str
    is_changed: bool
    margin: float
    sign: str
    signs: tuple[str, ...]
    seen: SeenLens
    turned_deg: float
    rise_k: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SignsView:
    """Four lenses, the same thing done otherwise to each.

    lenses: in the order of their numbers.
    change: what was done otherwise, in words; empty for nothing.
    is_cut: whether they are cut already; before, nobody knows what they will show.
    """

    lenses: tuple[SignedLens, ...]
    change: str
    is_cut: bool
