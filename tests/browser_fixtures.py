"""A real browser that notes every fault on the page and every request that would leave the machine."""

import os
import shutil
import socketserver
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import (
    Browser,
    BrowserContext,
    ConsoleMessage,
    Page,
    Response,
    expect,
    sync_playwright,
)

_NAMES = ("chromium", "chromium-browser", "google-chrome")
_ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    # Names of other machines are not found; what asks for them is noted.
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost",
)
_PATIENCE_MS = 30_000
_HERE = ("127.0.0.1", "localhost")


def find_browser() -> str | None:
    """Return the browser to use: what LABLIB_BROWSER names, else one on the search path."""
    named = os.environ.get("LABLIB_BROWSER")
    return named or next(filter(None, map(shutil.which, _NAMES)), None)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """One browser for all tests; without one they skip, or fail where LABLIB_BROWSER_REQUIRED is set."""
    found = find_browser()
    if found is None:
        reason = f"no browser: install one of {', '.join(_NAMES)}, or name one in LABLIB_BROWSER"
        if os.environ.get("LABLIB_BROWSER_REQUIRED"):
            pytest.fail(reason)
        pytest.skip(reason)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=found, args=list(_ARGUMENTS))
        yield browser
        browser.close()


class Watched:
    """A browser window that notes what goes wrong on its pages.

    faults: errors of scripts, errors on the console, replies that say something was wrong.
    outside: addresses off this machine that were asked for.
    """

    def __init__(self, context: BrowserContext) -> None:
        self._context = context
        self.faults: list[str] = []
        self.outside: list[str] = []

    @contextmanager
    def at(self, address: str) -> Iterator[Page]:
        """Open a page, yield it, close it, and see that nothing went wrong on it."""
        page = self._context.new_page()
        page.on("request", lambda request: self._note_address(request.url))
        page.on("websocket", lambda socket: self._note_address(socket.url))
        page.on("pageerror", lambda fault: self.faults.append(str(fault)))
        page.on("console", self._note_message)
        page.on("response", self._note_reply)
        page.goto(address)
        yield page
        page.close()
        assert self.faults == []
        assert self.outside == []

    def _note_address(self, address: str) -> None:
        if _is_outside(address):
            self.outside.append(address)

    def _note_message(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            self.faults.append(message.text)

    def _note_reply(self, reply: Response) -> None:
        if reply.status >= 400:
            self.faults.append(f"{reply.status} {reply.url}")


def _is_outside(address: str) -> bool:
    parts = urlsplit(address)
    return parts.scheme not in ("blob", "data", "about") and parts.hostname not in _HERE


@pytest.fixture
def watched(chromium: Browser) -> Iterator[Watched]:
    """A fresh browser window, with nothing remembered from another."""
    context = chromium.new_context(viewport={"width": 1280, "height": 1000})
    context.set_default_timeout(_PATIENCE_MS)
    expect.set_options(timeout=_PATIENCE_MS)
    yield Watched(context)
    context.close()


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A learner's folder for one test."""
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path / "learner"))
    return tmp_path / "learner"


@pytest.fixture
def no_way_out(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Send whatever server or kernel ask of the network to a listener that must hear nothing."""
    heard: list[bytes] = []

    class Listener(socketserver.BaseRequestHandler):
        def handle(self) -> None:
            heard.append(self.request.recv(200))

    with socketserver.ThreadingTCPServer(("127.0.0.1", 0), Listener) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        for name in ("http_proxy", "https_proxy", "all_proxy"):
            monkeypatch.setenv(name, f"http://127.0.0.1:{server.server_address[1]}")
            monkeypatch.setenv(name.upper(), f"http://127.0.0.1:{server.server_address[1]}")
        yield
        server.shutdown()
    assert heard == []


@pytest.fixture(scope="session")
def pictures(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder for pictures of the pages, to be looked at."""
    place = tmp_path_factory.mktemp("pictures_of_pages")
    print(f"\npictures of the pages: {place}")
    return place
