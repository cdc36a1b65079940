"""Rows read from the bare pages of a database file, for when the database itself cannot be asked any more.

Every row of a table stands on a leaf page of its own accord: what was harmed elsewhere in the file does not
matter to it. Source: "Database File Format", sections 1.6 and 2, in the documentation of SQLite.
"""

import struct
from collections.abc import Iterator
from typing import BinaryIO

PAGE_BYTES = 4096
# The first page begins with the header of the file.
_HEADER_BYTES = 100
_LEAF = b"\x0d"
_MOST_PAYLOAD_BYTES = 1_000_000
_REAL = 7
_INTEGER_BYTES = {1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8}
_CONSTANTS = {0: None, 8: 0, 9: 1}
_FIRST_BLOB = 12
Row = tuple[int, tuple]


def rows_on_pages(file: BinaryIO) -> Iterator[Row]:
    """Yield row number and columns of every row of any table that can still be made out.

    file: the database, its pages PAGE_BYTES long. Rows of deleted pages come too, and a row twice where its
    page was copied. Text that is no text is repaired as far as it goes.
    """
    number = 1
    while page := _page(file, number):
        yield from _rows_of_page(page, _HEADER_BYTES if number == 1 else 0, file)
        number += 1


def _page(file: BinaryIO, number: int) -> bytes:
    """Return a page, shorter where the file ends within it."""
    file.seek((number - 1) * PAGE_BYTES)
    return file.read(PAGE_BYTES)


def _rows_of_page(page: bytes, start: int, file: BinaryIO) -> Iterator[Row]:
    if page[start : start + 1] != _LEAF:
        return
    count = _number(page[start + 3 : start + 5])
    for place in range(start + 8, min(start + 8 + 2 * count, PAGE_BYTES - 1), 2):
        try:
            yield _row(page, _number(page[place : place + 2]), file)
        except (IndexError, ValueError, struct.error):
            # This one is lost; the next one is found by its own pointer.
            continue


def _row(page: bytes, at: int, file: BinaryIO) -> Row:
    size, at = _varint(page, at)
    row_number, at = _varint(page, at)
    here = _bytes_on_leaf(size)
    payload = page[at : at + here]
    if here < size:
        payload += _overflow(file, _number(page[at + here : at + here + 4]), size - here)
    return row_number, _columns(payload)


def _bytes_on_leaf(size: int) -> int:
    """Return how many bytes of a row stand on its leaf; the rest is on pages of its own."""
    most = PAGE_BYTES - 35
    if size <= most:
        return size
    if size > _MOST_PAYLOAD_BYTES:
        raise ValueError("no row is as long as that")
    least = (PAGE_BYTES - 12) * 32 // 255 - 23
    fitting = least + (size - least) % (PAGE_BYTES - 4)
    return fitting if fitting <= most else least


def _overflow(file: BinaryIO, number: int, size: int) -> bytes:
    found = b""
    while len(found) < size:
        page = _page(file, number) if number else b""
        part = page[4 : 4 + size - len(found)]
        if not part or len(page) < PAGE_BYTES:
            raise ValueError("the rest of the row is not there")
        found += part
        number = _number(page[:4])
    return found


def _columns(payload: bytes) -> tuple:
    end, at = _varint(payload, 0)
    kinds = []
    while at < end:
        kind, at = _varint(payload, at)
        kinds.append(kind)
    columns, at = [], end
    for kind in kinds:
        size = _size(kind)
        if at + size > len(payload):
            raise ValueError("a column goes on beyond its row")
        columns.append(_column(kind, payload[at : at + size]))
        at += size
    return tuple(columns)


def _size(kind: int) -> int:
    if kind >= _FIRST_BLOB:
        return (kind - _FIRST_BLOB) // 2
    if kind in _CONSTANTS:
        return 0
    return 8 if kind == _REAL else _INTEGER_BYTES.get(kind, _MOST_PAYLOAD_BYTES)


def _column(kind: int, raw: bytes) -> object:
    if kind in _CONSTANTS:
        return _CONSTANTS[kind]
    if kind in _INTEGER_BYTES:
        return int.from_bytes(raw, "big", signed=True)
    if kind == _REAL:
        return struct.unpack(">d", raw)[0]
    return raw.decode("utf-8", errors="replace") if kind % 2 else raw


def _number(raw: bytes) -> int:
    return int.from_bytes(raw, "big")


def _varint(raw: bytes, at: int) -> tuple[int, int]:
    """Return a number of one to nine bytes and the place after it; all but the ninth carry seven bits."""
    value = 0
    for place in range(at, at + 8):
        value = value << 7 | raw[place] & 0x7F
        if raw[place] < 0x80:
            return value, place + 1
    return value << 8 | raw[at + 8], at + 9
