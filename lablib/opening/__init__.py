"""Opening the workbook: the learner's own copies of the lessons, shown by JupyterLab as one document."""

import threading
import webbrowser
from pathlib import Path

from lablib import places
from lablib.errors import LabError
from lablib.opening.address import Address, noted, running
from lablib.opening.environment import leave_out_slow_import, throw_away
from lablib.opening.lessons import find_lesson


def open_workbook(wanted: str | None = None, *, browser: bool = True, renew: bool = False) -> int:
    """Open a lesson and serve it until Ctrl-C; return the exit status.

    wanted: the lesson, as `find_lesson` takes it.
    browser: whether to open one; the address is printed either way.
    renew: whether to put a fresh copy in place of the learner's own, which is kept beside it.

    Raises LabError when there is no such lesson, or its copy cannot be made or read.
    """
    shipped, folder = places.shipped("lessons"), places.learner_folder()
    lesson = find_lesson(wanted, shipped)
    if (address := running(folder)) is not None:
        return _show_in_running(address, lesson, browser=browser, renew=renew)
    leave_out_slow_import()
    copies = _prepared(shipped, folder / "lessons", lesson, renew=renew)
    _serve(folder, copies, lesson, browser=browser)
    print("Stopped. Your copies stay where they are.")
    return 0


def _show_in_running(address: Address, lesson: str, *, browser: bool, renew: bool) -> int:
    if renew:
        raise LabError(
            f"{lesson} cannot be renewed while the workbook is open: "
            "press Ctrl-C in the window where it was opened, then give the command again"
        )
    print(f"The workbook is open already. The lesson is at {address.full(lesson)}")
    if browser:
        # It was let in before; the token is printed, not handed over where other users could read it.
        _show(address.page(lesson))
    return 0


def _show(page: str) -> None:
    # Some browsers do not return until they are closed.
    threading.Thread(target=webbrowser.open, args=(page,), daemon=True).start()


def _prepared(shipped: Path, copies: Path, lesson: str, *, renew: bool) -> Path:
    """Bring the working copies up to date, say what there is to say, and return their folder."""
    from lablib.opening.copies import prepare, require_readable

    prepared = prepare(shipped, copies, renew=lesson if renew else None)
    require_readable(copies / lesson)
    print(f"Your own copies of the lessons: {copies}")
    print("What you write is saved there every few seconds. The lessons as they came stay as they are.")
    if prepared.kept is not None:
        print(f"A fresh copy of {lesson} is in place. Yours is kept as {prepared.kept.name}")
    for name in prepared.offered:
        print(
            f"A newer {name} came with the workbook; yours, with what you wrote, was left as it is. "
            f"`lablib open {name.partition('_')[0]} --renew` puts the newer one in place and keeps yours too."
        )
    return copies


def _serve(folder: Path, copies: Path, lesson: str, *, browser: bool) -> None:
    with throw_away() as data, noted(folder) as note:
        # Jupyter reads its folders from the environment, some of them when it is imported.
        from lablib.opening.copies import sign
        from lablib.opening.server import serve

        sign(copies, data)

        def announce(address: Address, entrance: str) -> None:
            note(address)
            print(f"The lesson is at {address.full(lesson)}")
            print("To stop, press Ctrl-C in this window.", flush=True)
            if browser:
                _show(entrance)

        serve(lesson, copies=copies, settings=folder / "settings", data=data, when_ready=announce)
