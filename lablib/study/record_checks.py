"""What may stand in a learner's record: names, ids, times, counts and answers, each refused in words."""

import json
import math
import re
from datetime import datetime

from lablib.errors import LabError

# The database keeps whole numbers of 64 bits.
GREATEST_SEED = 2**63 - 1
MOST_HINTS = 1000
MOST_SLIPS = 100
MOST_GIVEN_CHARACTERS = 10_000
MOST_WORDS_CHARACTERS = 4_000
DEEPEST_GIVEN = 8
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,99}")
_ID = re.compile(r"[0-9a-f]{32}")
_MOMENT = re.compile(r"(19[7-9]\d|2\d{3})-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{6}\+00:00", re.ASCII)
_MOST_SHOWN = 60
_JSON = json.JSONEncoder(ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":"))


def shown(value: object) -> str:
    """Return a value as a message quotes it: short, whatever it is."""
    try:
        text = ascii(value) if isinstance(value, str) and not _has_utf_8(value) else repr(value)
    except (ValueError, RecursionError):
        # Too many digits, or too many brackets.
        return f"({type(value).__name__})"
    return text if len(text) <= _MOST_SHOWN else f"{text[:_MOST_SHOWN]}..."


def require_name(thing: str, value: object) -> str:
    """Return a stable name: of a lesson, a question maker, a state or a mistake.

    thing: what it names, as it should appear in the message.

    Raises LabError with the characters there are.
    """
    if not isinstance(value, str) or not _NAME.fullmatch(value):
        raise LabError(
            f"{thing} {shown(value)} is no stable name: give 1 to 100 of the letters a to z, digits and "
            "any of . _ -, beginning with a letter or a digit"
        )
    return _plain(value)


def require_names(thing: str, values: object) -> tuple[str, ...]:
    """Return several stable names.

    thing: what one of them names, as it should appear in the message.

    Raises LabError for anything but a list or tuple of at most MOST_SLIPS of them.
    """
    if not isinstance(values, list | tuple) or len(values) > MOST_SLIPS:
        raise LabError(f"{thing}s {shown(values)} cannot be kept: give a list of at most {MOST_SLIPS} names")
    return tuple(require_name(thing, value) for value in values)


def require_id(thing: str, value: object) -> str:
    """Return an id.

    thing: what it belongs to, as it should appear in the message.

    Raises LabError.
    """
    if not isinstance(value, str) or not _ID.fullmatch(value):
        raise LabError(f"{thing} {shown(value)} is no id: give 32 of the digits 0 to 9 and a to f")
    return value


def require_moment(thing: str, value: object) -> str:
    """Return a time as the record writes it: UTC to the microsecond, so that it sorts as text.

    thing: what happened then, as it should appear in the message.

    Raises LabError with an example.
    """
    if not isinstance(value, str) or not _MOMENT.fullmatch(value) or not _is_on_the_calendar(value):
        raise LabError(
            f"{thing} {shown(value)} is no time of the record: give UTC from 1970 to 2999 "
            "written as in 2026-03-01T09:30:00.000000+00:00"
        )
    return value


def require_whole(thing: str, value: object, *, high: int) -> int:
    """Return a whole number from 0 to a greatest one.

    thing: what it counts, as it should appear in the message.

    Raises LabError with the range.
    """
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= high:
        raise LabError(f"{thing} {shown(value)} is no number to keep: give a whole number from 0 to {high}")
    return value


def require_words(thing: str, value: object) -> str:
    """Return a sentence or more.

    thing: what they are, as they should appear in the message.

    Raises LabError for no text, an empty one, or one of more than MOST_WORDS_CHARACTERS.
    """
    if not isinstance(value, str) or not 1 <= len(value) <= MOST_WORDS_CHARACTERS or not _is_legible(value):
        raise LabError(
            f"{thing} {shown(value)} cannot be kept: give a text of 1 to {MOST_WORDS_CHARACTERS} characters"
        )
    return value


def json_data(value: object) -> object:
    """Return an answer as plain JSON data.

    value: a text, number, truth value or None, or lists and dictionaries of these; tuples become lists.

    Raises LabError for anything else, for a number that is not finite, and for what is too long or too deep.
    """
    _require_json(value, DEEPEST_GIVEN)
    text = json_text(value)
    return value if value is None or type(value) in (str, int, float, bool) else json.loads(text)


def json_text(value: object) -> str:
    """Return JSON data as the one text it has in a record.

    Raises LabError for a text longer than MOST_GIVEN_CHARACTERS.
    """
    try:
        text = _JSON.encode(value)
    except ValueError:
        # Python writes no number of more than some thousand digits.
        raise LabError("the answer holds a number with thousands of digits: give a shorter one") from None
    if len(text) > MOST_GIVEN_CHARACTERS:
        raise LabError(
            f"the answer {shown(value)} has {len(text)} characters: give {MOST_GIVEN_CHARACTERS} at most"
        )
    return text


def _require_json(value: object, depth: int) -> None:
    if isinstance(value, str):
        if not _has_utf_8(value):
            raise LabError(f"the answer {shown(value)} holds half of a character: type it again")
    elif isinstance(value, float):
        if not math.isfinite(value):
            raise LabError(
                f"the answer {value} is not a finite number: give one, or the text as it was typed"
            )
    elif isinstance(value, list | tuple | dict):
        _require_json_parts(value, depth)
    elif not (value is None or isinstance(value, int)):
        raise LabError(
            f"the answer {shown(value)} is of type {type(value).__name__}: "
            "give a text, a number, or a list of these"
        )


def _require_json_parts(value: list | tuple | dict, depth: int) -> None:
    if depth == 0:
        raise LabError(f"the answer holds lists within lists: give at most {DEEPEST_GIVEN} within each other")
    if isinstance(value, dict):
        for key in value:
            if not isinstance(key, str):
                raise LabError(f"the answer has the key {shown(key)}, which is no text: give texts as keys")
            _require_json(key, depth)
    for part in value.values() if isinstance(value, dict) else value:
        _require_json(part, depth - 1)


def _is_on_the_calendar(text: str) -> bool:
    try:
        datetime.fromisoformat(text)
    except ValueError:
        return False
    return True


def _is_legible(text: str) -> bool:
    return "\0" not in text and _has_utf_8(text)


def _has_utf_8(text: str) -> bool:
    return text.isascii() or not any("\ud800" <= letter <= "\udfff" for letter in text)


def _plain(text: str) -> str:
    """Return a text as a plain `str`, whatever subclass it came as."""
    return str.__str__(text)
