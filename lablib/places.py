"""Where things are: what came with the workbook, the learner's own folder, and files written new."""

import os
import re
import tomllib
import unicodedata
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import BinaryIO

from lablib.errors import LabError

KINDS = ("lessons", "exercises", "answer_keys")
FOLDER_VARIABLE = "LABLIB_FOLDER"
LEARNER_VARIABLE = "LABLIB_LEARNER"
_MOST_CHARACTERS = 60
# Letters and digits of any script, with the marks that some scripts put on their letters.
_LETTERS, _MARKS = ("L", "Nd"), ("M",)
# Names that Windows keeps for devices, in any folder and with any ending.
_DEVICE = re.compile(r"(con|prn|aux|nul|com\d|lpt\d) *(\..*)?")
_PACKAGE = Path(__file__).resolve().parent


def shipped(kind: str) -> Path:
    """Return the folder of the lessons, exercises or answer keys that came with this workbook.

    kind: one of `KINDS`. In a checkout it is the checkout's own folder, else the one carried in the package.

    Raises LabError for another kind, or when the folder is not there.
    """
    if kind not in KINDS:
        raise LabError(f"{kind!r} did not come with the workbook: ask for one of {', '.join(KINDS)}")
    folder = (checkout() or _PACKAGE / "carried") / kind
    if not folder.is_dir():
        raise LabError(f"the folder of {kind} {folder} is missing: install the workbook again")
    return folder


@cache
def checkout() -> Path | None:
    """Return the checkout this package stands in, or None for an installed copy."""
    project = _PACKAGE.parent / "pyproject.toml"
    try:
        named = tomllib.loads(project.read_text(encoding="utf-8")).get("project", {}).get("name")
    except (OSError, ValueError):
        return None
    return project.parent if named == _PACKAGE.name else None


def learner_folder() -> Path:
    """Return the learner's own folder on this machine, made if it was not there.

    It is the platform's folder for a user's own data, which is not carried between machines: a
    database in a synced folder comes to harm. The variable LABLIB_FOLDER moves it; where
    LABLIB_LEARNER gives a name, it is that learner's folder within it, `learners/<name>`. There the name
    stands in small letters, so that "Ana" and "ana" are one learner whether or not a disk tells them apart.

    Raises LabError when LABLIB_FOLDER is not a full path, when LABLIB_LEARNER is no name for a folder, or
    when the folder cannot be made.
    """
    folder = _moved_folder() or _usual_folder()
    if name := learner_name():
        folder = folder / "learners" / _folded(name)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as fault:
        raise LabError(
            f"the learner's folder {folder} cannot be made ({fault.strerror}): "
            f"set {FOLDER_VARIABLE} to a folder you can write to"
        ) from None
    return folder


def record_file() -> Path:
    """Return the file of the learner's record, which need not be there yet; its folder is made.

    Raises LabError as `learner_folder` does.
    """
    return learner_folder() / "record.sqlite3"


def learner_name() -> str:
    """Return the name LABLIB_LEARNER gives to the learner at work here, or "" if it gives none.

    Raises LabError for one that cannot be the name of a folder everywhere.
    """
    given = os.environ.get(LEARNER_VARIABLE, "")
    return _checked_name(given) if given else ""


def set_learner(name: str) -> None:
    """Say who is at work in this process and in those it starts.

    name: as it is to be shown.

    Raises LabError for one that cannot be the name of a folder everywhere.
    """
    os.environ[LEARNER_VARIABLE] = _checked_name(name)


def write_new(file: Path, content: bytes) -> None:
    """Write a file that is not there yet, whole and on the disk, or not at all.

    file: where; content: all of it.

    Raises LabError when the file is there already, or when it cannot be written.
    """
    try:
        with file.open("xb") as new:
            _fill(file, new, content)
    except FileExistsError:
        raise LabError(f"{file} is there already and was left as it is: give another name") from None
    except OSError as fault:
        raise LabError(
            f"{file} cannot be written ({fault.strerror}): give a file in a folder you may write in"
        ) from None


def _fill(file: Path, new: BinaryIO, content: bytes) -> None:
    try:
        new.write(content)
        new.flush()
        os.fsync(new.fileno())
    except OSError:
        # Half a file must not pass for a whole one.
        with suppress(OSError):
            file.unlink()
        raise


def _checked_name(given: str) -> str:
    name = unicodedata.normalize("NFC", given)
    if not _can_be_a_folder(name) or not _can_be_a_folder(_folded(name)):
        raise LabError(
            f"learner's name {given!r} cannot be the name of a folder: give 1 to {_MOST_CHARACTERS} letters, "
            "digits, spaces or any of . _ -, beginning with a letter or a digit, not ending in a full stop "
            "or a space, and no name that Windows keeps for a device, such as con or com1"
        )
    return name


def _can_be_a_folder(name: str) -> bool:
    return (
        1 <= len(name) <= _MOST_CHARACTERS
        and all(_is_of(letter, _LETTERS + _MARKS) or letter in " ._-" for letter in name)
        and _is_of(name[0], _LETTERS)
        and name[-1] not in " ."
        and not _DEVICE.fullmatch(name.casefold())
    )


def _is_of(letter: str, categories: tuple[str, ...]) -> bool:
    return unicodedata.category(letter).startswith(categories)


def _folded(name: str) -> str:
    return unicodedata.normalize("NFC", name.casefold())


def _moved_folder() -> Path | None:
    given = os.environ.get(FOLDER_VARIABLE, "")
    if not given:
        return None
    folder = Path(given).expanduser()
    if not folder.is_absolute():
        raise LabError(
            f"{FOLDER_VARIABLE} {given!r} is not a full path: give one, such as {Path.cwd() / given}"
        )
    return folder


def _usual_folder() -> Path:
    from platformdirs import user_data_path

    return user_data_path("lablib", appauthor=False, roaming=False)
