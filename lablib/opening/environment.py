"""A throw-away place for Jupyter's configuration, kernels, signatures and history."""

import json
import os
import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

KERNEL = "python3"
# The user's own search paths and start-up file would reach into the lessons.
_FOREIGN = ("JUPYTER_PATH", "JUPYTER_CONFIG_PATH", "JUPYTER_CONFIG_DIR", "PYTHONSTARTUP")


def leave_out_slow_import() -> None:
    """Keep out a module that nobody here uses and that takes longer to import than all the rest.

    It checks international addresses in JSON schemas; where it is missing, that check is skipped.
    """
    sys.modules.setdefault("rfc3987_syntax", None)  # type: ignore[arg-type]


@contextmanager
def throw_away() -> Iterator[Path]:
    """Point Jupyter and IPython at folders that vanish again, and yield Jupyter's data folder.

    A kernel of this very Python stands there under the name that every lesson asks for, so that
    neither another active environment nor a kernel of the same name in the user's folders comes first.
    """
    with tempfile.TemporaryDirectory(prefix="lablib-", ignore_cleanup_errors=True) as name:
        data = Path(name) / "data"
        for variable in _FOREIGN:
            os.environ.pop(variable, None)
        os.environ.update(
            JUPYTER_NO_CONFIG="1",
            JUPYTER_DATA_DIR=str(data),
            JUPYTER_RUNTIME_DIR=str(Path(name) / "running"),
            JUPYTER_PREFER_ENV_PATH="0",
            IPYTHONDIR=str(Path(name) / "ipython"),
        )
        _write_kernel(data / "kernels" / KERNEL)
        from jupyter_core.paths import jupyter_config_dir

        try:
            yield data
        finally:
            # Told to use no configuration, Jupyter makes an empty folder for it and leaves it behind.
            shutil.rmtree(jupyter_config_dir(), ignore_errors=True)


def _write_kernel(folder: Path) -> None:
    folder.mkdir(parents=True)
    kernel = {
        "argv": [sys.executable, "-m", "ipykernel_launcher", "-f", "{connection_file}"],
        "display_name": "Bench workbook",
        "language": "python",
        "env": {"JUPYTER_NO_CONFIG": ""},
    }
    (folder / "kernel.json").write_text(json.dumps(kernel), encoding="utf-8")
