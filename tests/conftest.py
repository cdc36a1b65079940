"""What all tests share: a learner's folder of their own."""

import os
import shutil
import tempfile

import pytest
from hypothesis import settings

from lablib.places import FOLDER_VARIABLE

# The same examples on every machine, and no example fails for being slow: speed is the benchmarks' matter.
settings.register_profile("lablib", derandomize=True, deadline=None)
settings.load_profile("lablib")


def pytest_configure(config: pytest.Config) -> None:
    # For the notebooks' kernels as well, which no fixture reaches.
    config.learner_folder = tempfile.mkdtemp(prefix="lablib-tests-")
    os.environ[FOLDER_VARIABLE] = config.learner_folder


def pytest_unconfigure(config: pytest.Config) -> None:
    shutil.rmtree(config.learner_folder, ignore_errors=True)
