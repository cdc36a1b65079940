"""What `lablib record` does: the record in plain lines, written to a file, and a file taken in."""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from lablib.errors import LabError
from lablib.places import write_new
from lablib.study.marking import ANSWERS, State
from lablib.study.record import Attempt, Record
from lablib.study.record_exchange import MOST_CHARACTERS
from lablib.study.record_file import is_there


def record_text(path: Path, *, name: str) -> str:
    """Return in plain lines whose record it is, where it is, what was answered and what happened to it.

    path: the record's file. Where there is none, none is made.
    name: of the learner; "" where none was given.

    Raises LabError when the record cannot be read.
    """
    whose = f"Record of {name}" if name else "Record of this account's learner"
    head = f"{whose}\n{path}\n\n"
    if not is_there(path):
        return f"{head}Nothing is there yet: the record is made when a lesson's self-check is first opened."
    record = Record(path)
    attempts = [one for one in record.attempts() if one.state in ANSWERS]
    parts = [f"{head}{_counted(len(attempts), 'answer')}.", *_lessons(attempts, record.begun())]
    if notes := record.notes():
        told = "\n".join(f"{_local(at)}  {_printable(words)}" for at, words in notes)
        parts.append(f"What happened to the record:\n{told}")
    return "\n\n".join(parts)


def export_to(path: Path, file: Path) -> str:
    """Write a record to a file that is not there yet, and return what to say about it.

    path: the record's file.
    file: where to write.

    Raises LabError when there is no record, when the file is there already, or when it cannot be written.
    """
    if not is_there(path):
        raise LabError(f"there is no record {path} to export: give --learner NAME if it is another learner's")
    record = Record(path)
    write_new(file, record.export().encode())
    return f"The record is written to {file}; half-typed answers stay behind."


def import_from(path: Path, file: Path) -> str:
    """Take an exported record in and return what to say about it.

    path: the record's file, made if it is not there.
    file: as `export_to` writes it.

    Raises LabError when the file cannot be read or is no good; then nothing of it is taken in.
    """
    text = _read(file)
    try:
        merged = Record(path).merge(text)
    except LabError as fault:
        raise LabError(f"{file}: {fault}") from None
    return f"New entries: {merged.added}. Entries that were here before: {merged.known}. The record is {path}"


def _lessons(attempts: Sequence[Attempt], begun: dict[str, str]) -> list[str]:
    lessons = sorted({*begun, *(one.lesson for one in attempts)})
    lines = (_lesson(lesson, attempts, begun.get(lesson)) for lesson in lessons)
    return ["\n".join(lines)] if lessons else []


def _lesson(lesson: str, attempts: Sequence[Attempt], begun: str | None) -> str:
    here = [one for one in attempts if one.lesson == lesson]
    answered = {(one.maker, one.seed) for one in here}
    right = {(one.maker, one.seed) for one in here if one.state == State.RIGHT}
    when = f"begun {_local(begun)}" if begun else "its beginning not noted"
    done = f"{_counted(len(answered), 'question')} answered, {len(right)} of them right in the end"
    return f"Lesson {lesson}, {when}: {done if answered else 'no question answered yet'}."


def _counted(count: int, thing: str) -> str:
    return f"{count or 'No'} {thing}{'' if count == 1 else 's'}"


def _printable(words: str) -> str:
    """Return words without what would move a terminal's cursor: notes also come from other records."""
    return "".join(letter if letter.isprintable() or letter == "\n" else "?" for letter in words)


def _local(at: str) -> str:
    return datetime.fromisoformat(at).astimezone().strftime("%Y-%m-%d %H:%M")


def _read(file: Path) -> str:
    if file.is_symlink() or not file.is_file():
        raise LabError(f"{file} is no file, or a link to one: give the exported file itself")
    try:
        with file.open("rb") as opened:
            raw = opened.read(MOST_CHARACTERS + 1)
    except OSError as fault:
        raise LabError(f"{file} cannot be read ({fault.strerror}): give a file you may read") from None
    if len(raw) > MOST_CHARACTERS:
        raise LabError(f"{file} is longer than {MOST_CHARACTERS} bytes: give a record that was exported here")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise LabError(f"{file} is no UTF-8 text: give the exported file as it was written") from None
