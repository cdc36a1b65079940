"""`lablib open` in a process of its own: what it serves, to whom, and how it stops."""

import errno
import http.client
import json
import os
import re
import signal
import socket
import subprocess
import sys
import time
from pathlib import Path

import nbformat
import pytest
from served import command, opened
from stand_ins import folded, lesson, save, saved_by_the_page

from lablib.command import main

NAMES = ("02_prescription", "07_lens_form")


@pytest.fixture
def lessons(tmp_path: Path) -> Path:
    for name in NAMES:
        save(lesson(name, folded("6 * 7")), tmp_path / "shipped" / f"{name}.ipynb")
    return tmp_path / "shipped"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path / "learner"))
    return tmp_path / "learner"


@pytest.fixture
def temporary(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder that temporary files go to, so that what is left behind can be counted."""
    place = tmp_path / "temporary"
    place.mkdir()
    monkeypatch.setenv("TMPDIR", str(place))
    return place


def snapshot(folder: Path) -> dict[str, tuple[bytes, int]]:
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {str(path.relative_to(folder)): (path.read_bytes(), path.stat().st_mtime_ns) for path in files}


def test_it_says_where_the_copies_are_and_opens_the_lesson_asked_for(lessons: Path, folder: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        assert workbook.said == [
            f"Your own copies of the lessons: {folder / 'lessons'}",
            "What you write is saved there every few seconds. The lessons as they came stay as they are.",
            f"The lesson is at {workbook.url}",
            "To stop, press Ctrl-C in this window.",
        ]
        assert re.fullmatch(
            r"http://127\.0\.0\.1:\d+/doc/tree/07_lens_form\.ipynb\?token=[\w-]{32}", workbook.url
        )
        status, page = workbook.ask("GET", "/doc/tree/07_lens_form.ipynb")
        assert status == 200
        assert b"custom/custom.css" in page


def test_without_a_name_the_first_lesson_is_opened(lessons: Path, folder: Path) -> None:
    with opened("--no-browser", lessons=lessons) as workbook:
        assert "/doc/tree/02_prescription.ipynb?" in workbook.url


def test_what_is_saved_goes_to_the_copy_and_never_to_the_lesson(lessons: Path, folder: Path) -> None:
    before = snapshot(lessons)
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        _, reply = workbook.ask("GET", "/api/contents/07_lens_form.ipynb")
        model = json.loads(reply)
        model["content"]["cells"][0]["source"] += "\nmy own note"
        status, _ = workbook.ask("PUT", "/api/contents/07_lens_form.ipynb", body=json.dumps(model))
        assert status == 200
    assert "my own note" in (folder / "lessons" / "07_lens_form.ipynb").read_text(encoding="utf-8")
    assert snapshot(lessons) == before


def test_nobody_gets_in_without_the_token(lessons: Path, folder: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        assert workbook.ask("GET", "/api/contents", token="")[0] == 403
        assert workbook.ask("GET", "/api/contents", token="guessed")[0] == 403
        assert workbook.ask("GET", "/api/contents")[0] == 200


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux answers on all of 127.0.0.0/8")
def test_it_listens_on_one_loopback_address_alone(lessons: Path, folder: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook, socket.socket() as other:
        # A server that listens everywhere would answer here.
        assert other.connect_ex(("127.0.0.2", workbook.port)) == errno.ECONNREFUSED


def test_the_browser_gets_an_entrance_that_works_once_and_never_the_token(
    lessons: Path, folder: Path, tmp_path: Path
) -> None:
    told = tmp_path / "told"
    write = "import pathlib, sys; pathlib.Path(sys.argv[1]).write_text(sys.argv[2])"
    browser = f"{sys.executable} -c '{write}' {told} %s"
    with opened("7", lessons=lessons, BROWSER=browser) as workbook:
        entrance = wait_for(lambda: told.exists() and told.read_text(encoding="utf-8"))
        assert workbook.token not in entrance
        path = entrance.removeprefix(f"http://127.0.0.1:{workbook.port}")
        assert workbook.ask("GET", path, token="")[0] == 302
        assert workbook.ask("GET", path, token="")[0] == 404


def test_the_kernel_is_this_python_whatever_else_is_about(
    lessons: Path, folder: Path, tmp_path: Path, temporary: Path
) -> None:
    home = tmp_path / "home"
    for place in (home / ".local/share/jupyter", tmp_path / "elsewhere"):
        foreign = place / "kernels" / "python3" / "kernel.json"
        foreign.parent.mkdir(parents=True)
        foreign.write_text(json.dumps({"argv": ["/bin/false"], "display_name": "x", "language": "python"}))
    variables = {
        "HOME": str(home),
        "JUPYTER_PATH": str(tmp_path / "elsewhere"),
        "JUPYTER_DATA_DIR": str(tmp_path / "elsewhere"),
        "JUPYTER_PREFER_ENV_PATH": "1",
        "VIRTUAL_ENV": str(tmp_path / "elsewhere"),
        "CONDA_PREFIX": str(tmp_path / "elsewhere"),
        "CONDA_DEFAULT_ENV": "elsewhere",
    }
    with opened("7", "--no-browser", lessons=lessons, **variables) as workbook:
        specs = json.loads(workbook.ask("GET", "/api/kernelspecs")[1])["kernelspecs"]
        assert list(specs) == ["python3"]
        assert specs["python3"]["spec"]["argv"][0] == sys.executable


def test_the_users_own_jupyter_settings_are_neither_read_nor_changed(
    lessons: Path, folder: Path, tmp_path: Path, temporary: Path
) -> None:
    home = tmp_path / "home"
    for name in ("jupyter_config.py", "jupyter_server_config.py", "jupyter_lab_config.py"):
        settings = home / ".jupyter" / name
        settings.parent.mkdir(parents=True, exist_ok=True)
        settings.write_text(f"open({str(tmp_path / 'was_read')!r}, 'w')\n", encoding="utf-8")
    before = snapshot(home)
    with opened("7", "--no-browser", lessons=lessons, HOME=str(home)) as workbook:
        workbook.ask("POST", "/api/kernels", body="{}")
        code, _, errors = workbook.stop()
    assert (code, errors) == (0, "")
    assert snapshot(home) == before
    assert not (tmp_path / "was_read").exists()


@pytest.mark.skipif(sys.platform == "win32", reason="signals are sent otherwise there")
@pytest.mark.parametrize("wait_s", [0.0, 0.1, 0.3, 0.6])
def test_stopping_while_a_kernel_starts_is_as_quiet(
    lessons: Path, folder: Path, temporary: Path, wait_s: float
) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        assert workbook.ask("POST", "/api/kernels", body="{}")[0] == 201
        time.sleep(wait_s)
        assert workbook.stop() == (0, "Stopped. Your copies stay where they are.\n", "")
    assert list(temporary.iterdir()) == []


@pytest.mark.skipif(sys.platform == "win32", reason="signals are sent otherwise there")
@pytest.mark.parametrize("name", ["SIGINT", "SIGTERM", "SIGHUP"])
def test_one_signal_ends_server_and_kernels_and_leaves_nothing_behind(
    lessons: Path, folder: Path, temporary: Path, name: str
) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        assert workbook.ask("POST", "/api/kernels", body="{}")[0] == 201
        (connection,) = temporary.glob("lablib-*/running/kernel-*.json")
        kernel = json.loads(connection.read_text(encoding="utf-8"))["shell_port"]
        wait_for(lambda: listens(kernel))
        code, printed, errors = workbook.stop(getattr(signal, name))
    assert (code, printed, errors) == (0, "Stopped. Your copies stay where they are.\n", "")
    assert not listens(kernel)
    assert not listens(workbook.port)
    assert list(temporary.iterdir()) == []
    assert [path.name for path in folder.iterdir()] == ["lessons"]


def test_a_second_one_says_that_it_is_open_already(lessons: Path, folder: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        second = run("open", "2", "--no-browser", lessons=lessons)
        address = workbook.url.replace("07_lens_form", "02_prescription")
        assert (second.returncode, second.stderr) == (0, "")
        assert second.stdout == f"The workbook is open already. The lesson is at {address}\n"
        renewing = run("open", "7", "--renew", lessons=lessons)
        assert renewing.returncode == 2
        assert renewing.stderr == (
            "07_lens_form.ipynb cannot be renewed while the workbook is open: "
            "press Ctrl-C in the window where it was opened, then give the command again\n"
        )
    with opened("2", "--no-browser", lessons=lessons) as workbook:
        assert "/doc/tree/02_prescription.ipynb?" in workbook.url


@pytest.mark.skipif(sys.platform == "win32", reason="signals are sent otherwise there")
def test_saves_under_way_neither_hold_up_the_end_nor_spoil_the_copy(lessons: Path, folder: Path) -> None:
    path = "/api/contents/07_lens_form.ipynb"
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        model = workbook.ask("GET", path)[1]
        pages = [http.client.HTTPConnection("127.0.0.1", workbook.port) for _ in range(5)]
        for page in pages:
            page.request("PUT", path, body=model, headers={"Authorization": f"token {workbook.token}"})
        # Long enough for them to be taken on, too short for all of them to be answered.
        time.sleep(0.02)
        assert workbook.stop() == (0, "Stopped. Your copies stay where they are.\n", "")
        for page in pages:
            page.close()
    assert nbformat.read(folder / "lessons" / "07_lens_form.ipynb", as_version=4).cells


@pytest.mark.skipif(sys.platform == "win32", reason="there the folder says who may read it")
def test_the_note_with_the_token_is_for_its_user_alone(lessons: Path, folder: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons):
        assert (folder / "running.json").stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize(
    "note", ["", "[]", '{"port": 1}', '{"port": 9, "token": "t", "python": "/bin/other"}']
)
def test_a_note_left_by_a_crash_is_no_obstacle(lessons: Path, folder: Path, note: str) -> None:
    folder.mkdir()
    (folder / "running.json").write_text(note, encoding="utf-8")
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        assert workbook.ask("GET", "/api/status")[0] == 200


def test_a_newer_lesson_is_offered_in_one_line_and_renewed_on_demand(lessons: Path, folder: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons):
        pass
    saved_by_the_page(folder / "lessons" / "07_lens_form.ipynb", add="my own note")
    save(lesson("second printing"), lessons / "07_lens_form.ipynb")
    with opened("2", "--no-browser", lessons=lessons) as workbook:
        assert workbook.said[2] == (
            "A newer 07_lens_form.ipynb came with the workbook; yours, with what you wrote, "
            "was left as it is. `lablib open 07 --renew` puts the newer one in place and keeps yours too."
        )
    with opened("07", "--renew", "--no-browser", lessons=lessons) as workbook:
        (kept,) = (folder / "lessons").glob("*.kept-*")
        assert workbook.said[2] == (
            f"A fresh copy of 07_lens_form.ipynb is in place. Yours is kept as {kept.name}"
        )


def test_what_the_learner_chose_for_the_page_is_still_chosen_next_time(lessons: Path, folder: Path) -> None:
    path = "/lab/api/settings/@jupyterlab/apputils-extension:themes"
    chosen = json.dumps({"raw": json.dumps({"theme": "JupyterLab Dark"})})
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        assert workbook.ask("PUT", path, body=chosen)[0] == 204
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        assert json.loads(workbook.ask("GET", path)[1])["settings"] == {"theme": "JupyterLab Dark"}


def test_a_wrong_name_is_one_line_that_names_the_lessons(lessons: Path, folder: Path) -> None:
    wrong = run("open", "99", lessons=lessons)
    assert (wrong.returncode, wrong.stdout) == (2, "")
    assert wrong.stderr == "there is no lesson '99': give one of 02_prescription, 07_lens_form\n"


def test_the_commands_are_listed_when_none_is_given(capsys: pytest.CaptureFixture) -> None:
    assert main([]) == 2
    assert "open a lesson in the browser" in capsys.readouterr().err


def test_the_version_is_printed(capsys: pytest.CaptureFixture) -> None:
    assert main(["--version"]) == 0
    assert re.fullmatch(r"lablib \d+\.\d+\.\d+\n", capsys.readouterr().out)


def run(*words: str, lessons: Path) -> subprocess.CompletedProcess:
    return subprocess.run(
        command(*words, lessons=lessons),
        capture_output=True,
        text=True,
        timeout=60,
        env=os.environ,
        check=False,
    )


def listens(port: int) -> bool:
    with socket.socket() as knock:
        return knock.connect_ex(("127.0.0.1", port)) == 0


def wait_for(condition, seconds: float = 20):
    """Return what the condition gives once that is true, or fail."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if found := condition():
            return found
        time.sleep(0.05)
    raise AssertionError(f"still waiting after {seconds} s")
