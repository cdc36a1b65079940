"""JupyterLab as one calm document, in this very process.

In this process and not in one of its own: then there is one thing to stop and nothing to orphan, the
port and the moment it listens are known without reading a log, and it starts sooner.
"""

import asyncio
import secrets
import signal
import subprocess
from collections.abc import Callable
from pathlib import Path

from jupyter_server.services.kernels.kernelmanager import ServerKernelManager
from jupyterlab.labapp import LabApp
from tornado.web import HTTPError, RequestHandler
from traitlets.config import Config

from lablib.opening.address import HOST, Address
from lablib.opening.environment import KERNEL

PAGE = Path(__file__).parent / "page"
_GRACE_S = 1.0
_STOPPING = ("SIGINT", "SIGTERM", "SIGHUP", "SIGBREAK")


def serve(
    lesson: str, *, copies: Path, settings: Path, data: Path, when_ready: Callable[[Address, str], None]
) -> None:
    """Serve the lessons until a signal to stop comes, then end every kernel.

    lesson: file name of the lesson to show first.
    copies: folder of the working copies.
    settings: folder where the page keeps what the learner chose, such as the size of the type.
    data: Jupyter's data folder.
    when_ready: called once it listens, with its address and with an entrance to the lesson that lets
        in one browser, once: it will stand in the list of processes, where the token must not.
    """
    # Server extensions that happen to be installed beside are no business of the workbook.
    LabApp.load_other_extensions = False
    token, key = secrets.token_urlsafe(24), secrets.token_urlsafe(24)
    configuration = _configuration(copies, settings, data, token)
    app = LabApp.initialize_server(argv=[], config=configuration, static_custom_path=[str(PAGE)])
    address = Address(port=app.port, token=token)
    app.web_app.add_handlers(".*", [("/enter", _Entrance, {"keys": {key}, "goal": address.full(lesson)})])
    app.io_loop.add_callback(when_ready, address, f"{address.root}enter?key={key}")
    _stop_on_signals(lambda: app.stop(from_signal=True))
    app.start()
    _finish(app.io_loop.asyncio_loop)


def _finish(loop: asyncio.AbstractEventLoop) -> None:
    """Let what is still under way come to its end: the last save, above all.

    The server stops its loop and leaves its tasks where they are; the threads that work for them would
    then keep this process from ending.
    """
    loop.set_exception_handler(lambda *_: None)
    for grace_s in (_GRACE_S, _GRACE_S):
        if tasks := asyncio.all_tasks(loop):
            loop.run_until_complete(asyncio.wait(tasks, timeout=grace_s))
        for task in asyncio.all_tasks(loop):
            task.cancel()


def _configuration(copies: Path, settings: Path, data: Path, token: str) -> Config:
    config = Config()
    config.Application.log_level = "ERROR"
    config.ServerApp.update(
        ip=HOST,
        port=0,
        root_dir=str(copies),
        open_browser=False,
        # Whoever gives the command may be root, in a container for one; nobody else gets in.
        allow_root=True,
        terminals_enabled=False,
    )
    config.IdentityProvider.token = token
    config.MultiKernelManager.kernel_manager_class = f"{__name__}.{QuietKernelManager.__name__}"
    config.KernelSpecManager.allowed_kernelspecs = {KERNEL}
    config.LabApp.update(
        app_settings_dir=str(PAGE),
        user_settings_dir=str(settings),
        workspaces_dir=str(data / "workspaces"),
        custom_css=True,
        # Nothing leaves the machine: no news, no search for updates, no list of extensions.
        news_url=None,
        check_for_updates_class="jupyterlab.handlers.announcements.NeverCheckForUpdate",
        extension_manager="readonly",
    )
    return config


def _stop_on_signals(stop: Callable[[], None]) -> None:
    # Which of them there are depends on the platform.
    numbers = [getattr(signal, name) for name in _STOPPING if hasattr(signal, name)]

    def stop_once(*_: object) -> None:
        for number in numbers:
            signal.signal(number, signal.SIG_IGN)
        stop()

    for number in numbers:
        signal.signal(number, stop_once)


class QuietKernelManager(ServerKernelManager):
    """Starts kernels that write nothing into the window where the workbook was opened.

    They would write warnings there as they start, and a stack trace when stopped while starting. What goes
    wrong in a lesson is shown in the lesson.
    """

    async def start_kernel(self, *args: object, **kwargs: object) -> None:
        """Start the kernel with its stream of errors closed off."""
        await super().start_kernel(*args, **(kwargs | {"stderr": subprocess.DEVNULL}))


class _Entrance(RequestHandler):
    """Lets in whoever brings the key, once, and sends them on to the lesson."""

    def initialize(self, keys: set[str], goal: str) -> None:
        self.keys, self.goal = keys, goal

    def get(self) -> None:
        key = self.get_query_argument("key", "")
        if key not in self.keys:
            raise HTTPError(404)
        self.keys.remove(key)
        self.redirect(self.goal)
