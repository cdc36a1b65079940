"""The workbook opened in a process of its own, as a person opens it."""

import http.client
import os
import re
import shutil
import signal
import subprocess
import sys
import sysconfig
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

_START_SECONDS = 60
_STOP_SECONDS = 30
_OTHER_LESSONS = """
import sys
from pathlib import Path
from lablib import command, places
folder = Path(sys.argv.pop(1))
places.shipped = lambda kind: folder
sys.exit(command.main())
"""


@dataclass(kw_only=True)
class Served:
    """A workbook that is running.

    url: the address it printed.
    said: the lines it printed up to then.
    """

    process: subprocess.Popen
    url: str
    said: list[str] = field(default_factory=list)

    @property
    def port(self) -> int:
        return urlsplit(self.url).port

    @property
    def token(self) -> str:
        return parse_qs(urlsplit(self.url).query)["token"][0]

    def ask(
        self, method: str, path: str, *, token: str | None = None, body: str | None = None
    ) -> tuple[int, bytes]:
        """Return status and body of one request, with the workbook's own token unless given another."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        allowed = {"Authorization": f"token {self.token if token is None else token}"}
        connection.request(method, path, body=body, headers=allowed)
        reply = connection.getresponse()
        status, content = reply.status, reply.read()
        connection.close()
        return status, content

    def stop(self, number: int = signal.SIGINT) -> tuple[int, str, str]:
        """Send a signal and return the exit status, what was printed since, and the errors."""
        self.process.send_signal(number)
        printed, errors = self.process.communicate(timeout=_STOP_SECONDS)
        return self.process.returncode, printed, errors


def command(*words: str, lessons: Path | None = None) -> list[str]:
    """Return the command line of lablib; with other lessons than those shipped if a folder is given."""
    if lessons is not None:
        return [sys.executable, "-c", _OTHER_LESSONS, str(lessons), *words]
    return [shutil.which("lablib", path=sysconfig.get_path("scripts")), *words]


@contextmanager
def opened(*words: str, lessons: Path | None = None, **variables: str) -> Iterator[Served]:
    """Open the workbook, yield it once it has printed its address, and see that it is gone afterwards.

    words: what follows `lablib open`.
    lessons: a folder of lessons to use in place of those shipped.
    variables: environment variables on top of this process's own.
    """
    process = subprocess.Popen(
        command("open", *words, lessons=lessons),
        env={**os.environ, **variables},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    try:
        yield _when_listening(process)
    finally:
        if process.poll() is None:
            process.send_signal(signal.SIGINT)
            try:
                process.communicate(timeout=_STOP_SECONDS)
            finally:
                process.kill()


def _when_listening(process: subprocess.Popen) -> Served:
    watchdog = threading.Timer(_START_SECONDS, process.kill)
    watchdog.start()
    said = []
    for line in process.stdout:
        said.append(line.rstrip("\n"))
        if "To stop" in line:
            break
    watchdog.cancel()
    found = re.search(r"http://\S+", "\n".join(said))
    assert found, f"no address among {said}; errors: {process.stderr.read()}"
    return Served(process=process, url=found[0], said=said)
