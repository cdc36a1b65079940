"""What the picture of an inspected lens shows: order, check value and reading, quantity by quantity."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckRow:
    """One quantity of a lens in three columns.

    quantity: "sphere", "cylinder" or "axis"; unit: "D" or "degrees".
    columns: order, check value and reading, as they are written.
    order_off, read_off: how far order and reading lie from the check value [unit]; not-a-number where there
        is none.
    limit: how far off the reading may be [unit]; None where the standard sets none.
    passes: whether the reading is within it.
    """

    quantity: str
    unit: str
    columns: tuple[str, str, str]
    order_off: float
    read_off: float
    limit: float | None
    passes: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckView:
    """A compensated lens on the focimeter.

    rows: sphere and cylinder, and the axis where both have one.
    passes: against the check value; would_pass_the_order: against the powers ordered.
    """

    rows: tuple[CheckRow, ...]
    passes: bool
    would_pass_the_order: bool
