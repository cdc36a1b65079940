"""What all tests share: a learner's folder of their own."""

import os
import shutil
import tempfile
from collections.abc import Callable

import pytest
from hypothesis import settings
from xdist.scheduler import LoadScopeScheduling

from lablib.places import FOLDER_VARIABLE
from lablib.questions.makers import MAKERS

# The same examples on every machine, and no example fails for being slow: speed is the benchmarks' matter.
settings.register_profile("lablib", derandomize=True, deadline=None)
settings.load_profile("lablib")


TABLES: pytest.StashKey[dict[str, list[str]]] = pytest.StashKey()

# Processes the whole suite is shared between at most: each has a browser and a server beside it.
_MOST_PROCESSES = 4


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Share the whole suite between the processors; run what was named, and what is timed, in one process."""
    whole = config.args == config.getini("testpaths")
    return min(_MOST_PROCESSES, os.cpu_count() or 1) if whole else 0


class ByWork(LoadScopeScheduling):
    """Keeps together what shares work: tests of one maker's questions, cells of one notebook, a file."""

    def _split_scope(self, nodeid: str) -> str:
        path, _, test = nodeid.partition("::")
        maker = test.partition("[")[2].removesuffix("]")
        return maker if maker in MAKERS else path


def pytest_xdist_make_scheduler(config: pytest.Config, log: object) -> ByWork:
    return ByWork(config, log)


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


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Hand the tables of a process among several over to the one that prints them."""
    handed = getattr(session.config, "workeroutput", None)
    if handed is not None:
        handed["tables"] = session.config.stash[TABLES]


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node: object) -> None:
    for title, lines in getattr(node, "workeroutput", {}).get("tables", {}).items():
        node.config.stash[TABLES].setdefault(title, []).extend(lines)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    for title, lines in config.stash[TABLES].items():
        terminalreporter.section(title)
        for line in sorted(lines):
            terminalreporter.write_line(line)
