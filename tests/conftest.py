"""What all tests share: a learner's folder of their own."""

import os
import shutil
import tempfile
from collections.abc import Callable

import pytest
from hypothesis import settings

from lablib.places import FOLDER_VARIABLE

# The same examples on every machine, and no example fails for being slow: speed is the benchmarks' matter.
settings.register_profile("lablib", derandomize=True, deadline=None)
settings.load_profile("lablib")


TABLES: pytest.StashKey[dict[str, list[str]]] = pytest.StashKey()


def pytest_configure(config: pytest.Config) -> None:
    config.stash[TABLES] = {}
    # For the notebooks' kernels as well, which no fixture reaches.
    config.learner_folder = tempfile.mkdtemp(prefix="lablib-tests-")
    os.environ[FOLDER_VARIABLE] = config.learner_folder


def pytest_unconfigure(config: pytest.Config) -> None:
    shutil.rmtree(config.learner_folder, ignore_errors=True)


@pytest.fixture(scope="session")
def report_table(pytestconfig: pytest.Config) -> Callable[[str, str], None]:
    """Return a function that takes a line of a table which is printed when all tests have run.

    It is called with the table's title and the line.
    """

    def add(title: str, line: str) -> None:
        pytestconfig.stash[TABLES].setdefault(title, []).append(line)

    return add


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    for title, lines in config.stash[TABLES].items():
        terminalreporter.section(title)
        for line in lines:
            terminalreporter.write_line(line)
