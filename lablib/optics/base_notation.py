"""One prism in every notation of its base: words, letters, the full circle and the half circle.

In the full circle a base has degrees from 0 to 360, anticlockwise as the observer facing the wearer sees
them: for the right eye 0 is in, for the left eye 0 is out. In the half circle it has degrees as an axis
has them and a word, up or down; a base that is neither lies along 180, and its word is in or out.
"""

from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.power import wrapped_axis_deg
from lablib.optics.prism import in_words, resultant

_LETTERS = {"base in": "BI", "base out": "BO", "base up": "BU", "base down": "BD", " with": ""}
_NONE = "no prism"


@dataclass(frozen=True, slots=True, kw_only=True)
class BaseNotations:
    """A prism of one eye in every notation.

    amount_prism_d: amount [prism D].
    full_circle_deg: base, from 0 and below 360 [degrees]; 0 where there is no prism.
    half_circle_deg: the same as an axis, above 0 and up to 180 [degrees].
    half_circle_way: "up" or "down"; along 180 "in" or "out".
    words: "2.00 base in with 1.50 base up".
    letters: "2.00 BI 1.50 BU".
    """

    amount_prism_d: float
    full_circle_deg: float
    half_circle_deg: float
    half_circle_way: str
    words: str
    letters: str

    @property
    def full_circle(self) -> str:
        """Amount and base in the full circle: "2.50 base at 37 degrees"."""
        if self.words == _NONE:
            return _NONE
        return f"{self.amount_prism_d:.2f} base at {round(self.full_circle_deg) % 360} degrees"

    @property
    def half_circle(self) -> str:
        """Amount and base in the half circle: "2.50 base up at 37 degrees"."""
        if self.words == _NONE:
            return _NONE
        degrees, way = round(self.half_circle_deg) or 180, self.half_circle_way
        if degrees == 180:
            # Rounded onto the line, where up and down would no longer tell one end from the other.
            way = "in" if "BI" in self.letters else "out"
        return f"{self.amount_prism_d:.2f} base {way} at {degrees} degrees"


def base_notations(*, eye: Eye | str, in_prism_d: float, up_prism_d: float) -> BaseNotations:
    """Return a prism in every notation.

    eye: the eye it is for.
    in_prism_d, up_prism_d: components base in and base up [prism D].

    Raises LabError for no eye or a component that is not a number.
    Source: ISO 8429 for the full circle; the others are common practice.
    """
    prism = resultant(eye=eye, in_prism_d=in_prism_d, up_prism_d=up_prism_d)
    words = in_words(in_prism_d, up_prism_d)
    letters = words
    for spoken, letter in _LETTERS.items():
        letters = letters.replace(spoken, letter)
    return BaseNotations(
        amount_prism_d=prism.amount_prism_d,
        full_circle_deg=prism.base,
        half_circle_deg=wrapped_axis_deg(prism.base),
        half_circle_way=_way(prism.base, in_prism_d),
        words=words,
        letters=letters,
    )


def _way(base_deg: float, in_prism_d: float) -> str:
    if base_deg % 180.0 == 0.0:
        return "in" if in_prism_d > 0.0 else "out"
    return "up" if base_deg < 180.0 else "down"
