"""`lablib record`, and `--learner` down to the kernels."""

import json
import os
import re
import shutil
import subprocess
import sysconfig
from pathlib import Path

import pytest
from jupyter_client.blocking import BlockingKernelClient
from served import opened

from lablib.command import main
from lablib.study.record import Record


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A learner's folder, with the variables set back afterwards."""
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path / "folder"))
    monkeypatch.setenv("LABLIB_LEARNER", "")
    return tmp_path / "folder"


def answered(record: Record) -> Record:
    record.begin("07")
    record.add(lesson="07", maker="edge", seed=1, given="4.2 mm", state="right")
    return record


def test_the_record_is_told(folder: Path, capsys: pytest.CaptureFixture):
    answered(Record(folder / "record.sqlite3"))

    assert main(["record"]) == 0
    out, errors = capsys.readouterr()
    lines = out.splitlines()
    assert lines[:4] == ["Record of this account's learner", str(folder / "record.sqlite3"), "", "1 answer."]
    assert re.fullmatch(
        r"Lesson 07, begun \d{4}-\d\d-\d\d \d\d:\d\d: 1 question answered, 1 of them right in the end\.",
        lines[5],
    )
    assert (len(lines), errors) == (6, "")


@pytest.mark.parametrize(
    "words", ["--learner Ana export FILE", "export --learner Ana FILE", "export FILE --learner Ana"]
)
def test_the_learner_may_be_named_before_or_after(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture, words: str
):
    record = answered(Record(folder / "learners" / "ana" / "record.sqlite3"))
    file = tmp_path / "out.json"

    assert main(["record", *words.replace("FILE", str(file)).split()]) == 0
    assert json.loads(file.read_text(encoding="utf-8"))["learner_id"] == record.learner_id
    assert capsys.readouterr().out == f"The record is written to {file}; half-typed answers stay behind.\n"


def test_a_record_goes_from_one_learner_to_another_and_is_told_by_name(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture, monkeypatch: pytest.MonkeyPatch
):
    answered(Record(folder / "learners" / "ana" / "record.sqlite3"))
    file = str(tmp_path / "out.json")
    assert main(["record", "export", file, "--learner", "ana"]) == 0
    assert main(["record", "import", file, "--learner", "Änne Müller"]) == 0
    capsys.readouterr()

    assert main(["record", "--learner", "änne MÜLLER"]) == 0
    lines = capsys.readouterr().out.splitlines()
    path = folder / "learners" / "änne müller" / "record.sqlite3"
    assert lines[:4] == ["Record of änne MÜLLER", str(path), "", "1 answer."]
    assert "1 of its answers were new" in lines[-1]
    monkeypatch.setenv("LABLIB_LEARNER", "")
    assert main(["record"]) == 0
    assert "Nothing is there yet" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--learner", ""], "learner's name '' cannot be the name of a folder"),
        (["--learner", "../../etc"], "learner's name '../../etc' cannot be the name of a folder"),
        (["export", "out.json"], "there is no record "),
        (["import", "missing.json"], "missing.json is no file, or a link to one"),
    ],
)
def test_what_cannot_be_done_is_one_line_and_status_2(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture,
    words: list[str],
    said: str,
):
    monkeypatch.chdir(tmp_path)

    assert main(["record", *words]) == 2
    out, errors = capsys.readouterr()
    assert out == ""
    assert errors.startswith(said)
    assert errors.count("\n") == 1
    assert [path.name for path in tmp_path.iterdir()] in ([], ["folder"])


@pytest.mark.parametrize("words", [["export"], ["import"], ["delete"], ["export", "FILE", "--learner"]])
def test_words_that_are_no_action_are_refused(capsys: pytest.CaptureFixture, words: list[str]):
    with pytest.raises(SystemExit) as ended:
        main(["record", *words])

    assert ended.value.code == 2
    assert "usage: lablib record" in capsys.readouterr().err


def test_the_help_names_actions_and_learner(capsys: pytest.CaptureFixture):
    with pytest.raises(SystemExit):
        main(["record", "--help"])
    out = re.sub(r"\s+", " ", capsys.readouterr().out)

    assert "export write the record to a new file" in out
    assert "import take in what another record exported" in out
    assert "--learner NAME who is at work, where people share an account" in out


def test_the_variable_names_the_learner_as_well(folder: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("LABLIB_LEARNER", "Bo")
    answered(Record(folder / "learners" / "bo" / "record.sqlite3"))
    told = subprocess.run(
        [shutil.which("lablib", path=sysconfig.get_path("scripts")), "record"],
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
        env=os.environ,
    )

    path = folder / "learners" / "bo" / "record.sqlite3"
    assert told.stdout.splitlines()[:4] == ["Record of Bo", str(path), "", "1 answer."]
    assert told.stderr == ""


def test_kernels_keep_the_record_of_the_learner_the_workbook_was_opened_for(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    monkeypatch.setenv("LABLIB_LEARNER", "somebody else")
    own, temporary = folder / "learners" / "ana", tmp_path / "temporary"
    temporary.mkdir()
    code = (
        "from lablib.study.record import Record; "
        "Record.of_learner().add(lesson='07', maker='edge', seed=1, given='x', state='right')"
    )
    with opened("--no-browser", "--learner", "Ana", TMPDIR=str(temporary)) as workbook:
        assert workbook.said[0] == f"Your own copies of the lessons: {own / 'lessons'}"
        assert workbook.ask("POST", "/api/kernels", body="{}")[0] == 201
        (connection,) = temporary.glob("lablib-*/running/kernel-*.json")
        client = BlockingKernelClient(connection_file=str(connection))
        client.load_connection_file()
        client.start_channels()
        client.wait_for_ready(timeout=60)
        reply = client.execute(code, reply=True, timeout=60)
        client.stop_channels()
    assert reply["content"]["status"] == "ok"

    assert len(Record(own / "record.sqlite3").attempts()) == 1
    assert sorted(path.name for path in (folder / "learners").iterdir()) == ["ana"]


def test_two_learners_have_the_workbook_open_at_once(folder: Path):
    with (
        opened("--no-browser", "--learner", "Ana") as first,
        opened("--no-browser", "--learner", "Bo") as second,
    ):
        assert first.port != second.port
        assert {path.name for path in (folder / "learners").iterdir()} == {"ana", "bo"}
    assert not (folder / "lessons").exists()
