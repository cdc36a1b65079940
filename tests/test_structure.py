"""The shape of the project: layers, top level, style, docstrings, data tables."""

import ast
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from lablib.datafile import GRADES

ROOT = Path(__file__).resolve().parent.parent
MODULES = sorted((ROOT / "lablib").rglob("*.py"))
TABLES = sorted((ROOT / "lablib").rglob("*.toml"))
TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "pyproject.toml",
    "lessons",
    "lablib",
    "tests",
    "exercises",
    "answer_keys",
}
by_module = pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))


def run(*command: str) -> subprocess.CompletedProcess:
    return subprocess.run(
        [sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True, check=False
    )


def test_the_import_contract_holds():
    # import-linter has no entry for python -m, so its own function is called in a fresh interpreter.
    code = "from importlinter.cli import lint_imports_command; lint_imports_command(['--no-cache'])"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=False)
    assert "Contracts: 1 kept, 0 broken." in done.stdout, done.stdout + done.stderr


@pytest.mark.parametrize("check", [("check",), ("format", "--check")])
def test_style(check: tuple[str, ...]):
    done = run("ruff", *check, "lablib", "tests")
    assert done.returncode == 0, done.stdout + done.stderr


def test_nothing_else_stands_at_the_top_level():
    if not (ROOT / ".git").exists():
        pytest.skip("not a git checkout, so it cannot be told what belongs to it")
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    top = {line.partition("/")[0] for line in listed.splitlines()}
    assert {name for name in top if not name.startswith(".")} <= TOP_LEVEL


def test_importing_the_package_imports_nothing_else():
    assert not re.search(r"^\s*(import|from) ", (ROOT / "lablib/__init__.py").read_text(), re.MULTILINE)


def test_only_panels_import_widgets():
    for path in MODULES:
        if "panels" not in path.parts:
            assert "ipywidgets" not in path.read_text(encoding="utf-8"), path


@by_module
def test_modules_are_short_enough_to_read(path: Path):
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 250


def public_definitions(tree: ast.Module):
    """Yield every class and function a caller may use, methods included."""
    for node in tree.body:
        if isinstance(node, ast.ClassDef | ast.FunctionDef) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                for inner in node.body:
                    if isinstance(inner, ast.FunctionDef) and not inner.name.startswith("_"):
                        yield inner


@by_module
def test_public_names_have_a_docstring_that_is_a_sentence(path: Path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    assert ast.get_docstring(tree), path
    for node in public_definitions(tree):
        text = ast.get_docstring(node)
        assert text, f"{path.name}: {node.name} has no docstring"
        first = " ".join(text.split("\n\n")[0].split())
        assert re.search(r"[.:;]", first), f"{path.name}: {node.name}: {first!r} is not a sentence"


@pytest.mark.parametrize("path", TABLES, ids=lambda path: str(path.relative_to(ROOT)))
def test_grades_in_data_tables_are_grades(path: Path):
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    grades = list(_grades(table))
    assert all(grade in GRADES for grade in grades), grades
    assert grades or path.parent.name == "demo_tickets", f"{path.name} says nowhere how good its numbers are"


def _grades(table: dict):
    for key, value in table.items():
        if key == "grade" and isinstance(value, str):
            yield value
        elif isinstance(value, dict):
            yield from _grades(value)
