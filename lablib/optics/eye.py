"""Which eye, and which way its nose lies."""

from enum import StrEnum

from lablib.errors import LabError


class Eye(StrEnum):
    """The right or the left eye of the wearer.

    Drawings face the wearer: +x points to the observer's right, which is the wearer's left (ISO 8429).
    """

    RIGHT = "right"
    LEFT = "left"

    @property
    def nasal_sign(self) -> int:
        """The sign of x on the nose side: +1 for the right eye, -1 for the left."""
        return 1 if self is Eye.RIGHT else -1

    @property
    def other(self) -> "Eye":
        """The other eye of the wearer."""
        return Eye.LEFT if self is Eye.RIGHT else Eye.RIGHT

    @classmethod
    def of(cls, value: "Eye | str") -> "Eye":
        """Return the eye for an Eye or for the word "right" or "left".

        value: the eye or its word.

        Raises LabError for anything else.
        """
        try:
            return cls(value)
        except ValueError:
            raise LabError(f'eye {value!r} is not an eye: give "right" or "left"') from None


# The wearer's eyes, to draw one from or to count by.
EYES = tuple(Eye)
