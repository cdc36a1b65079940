"""Where things are: what came with the workbook, and the learner's own folder."""

import os
import tomllib
from functools import cache
from pathlib import Path

from lablib.errors import LabError

KINDS = ("lessons", "exercises", "answer_keys")
FOLDER_VARIABLE = "LABLIB_FOLDER"
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
    database in a synced folder comes to harm. The variable LABLIB_FOLDER moves it.

    Raises LabError when LABLIB_FOLDER is not a full path or the folder cannot be made.
    """
    folder = _moved_folder() or _usual_folder()
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as fault:
        raise LabError(
            f"the learner's folder {folder} cannot be made ({fault.strerror}): "
            f"set {FOLDER_VARIABLE} to a folder you can write to"
        ) from None
    return folder


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
