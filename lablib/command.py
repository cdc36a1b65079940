"""The command line; what there is stands in the table of subcommands."""

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from lablib import places
from lablib.errors import LabError

# The exit status of a job that must not go on before a question has been answered.
_HELD = 3


def _learner_argument(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--learner",
        metavar="NAME",
        # Where a command has commands of its own, theirs must not set back what was said before.
        default=argparse.SUPPRESS,
        help="who is at work, where people share an account: each name has its own copies and record",
    )


def _open_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "lesson", nargs="?", metavar="LESSON", help="its number (7) or the start of its name; else the first"
    )
    parser.add_argument("--no-browser", action="store_true", help="print the address and open no browser")
    parser.add_argument(
        "--renew",
        action="store_true",
        help="put a fresh copy of the lesson in place; yours is kept beside it under the day's date",
    )
    _learner_argument(parser)


def _open(arguments: argparse.Namespace) -> int:
    from lablib.opening import open_workbook

    return open_workbook(arguments.lesson, browser=not arguments.no_browser, renew=arguments.renew)


def _job_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("ticket", metavar="TICKET.toml", help="ticket file; a bare word names a demo ticket")
    parser.add_argument(
        "--bench",
        metavar="BENCH.toml",
        type=Path,
        help="a bench profile: what was measured at a bench",
    )
    how = parser.add_mutually_exclusive_group()
    how.add_argument("--json", action="store_true", help="print the figures for programs")
    how.add_argument("--explain", action="store_true", help="print each figure's working as well")
    how.add_argument(
        "--remedies",
        action="store_true",
        help="rank what would help the lenses to hold, in place of the sheet",
    )


def _job(arguments: argparse.Namespace) -> int:
    import json

    from lablib.bench.profile import read_profile
    from lablib.job.demo import file_named
    from lablib.job.explain import explain_text
    from lablib.job.figures import as_dict
    from lablib.job.remedy_report import remedies_text
    from lablib.job.report import as_text
    from lablib.job.sheet import work_file

    profile = arguments.bench and read_profile(arguments.bench)
    sheet = work_file(file_named(arguments.ticket), profile)
    if arguments.json:
        print(json.dumps(as_dict(sheet), indent=2, allow_nan=False))
    elif arguments.remedies:
        print(remedies_text(sheet))
    else:
        print(as_text(sheet))
    if arguments.explain:
        print(f"\n{explain_text(sheet)}")
    return _HELD if sheet.holds else 0


def _outline_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "what", metavar="TICKET.toml|TRACE", help="ticket or frame trace; a bare word names a demo ticket"
    )
    _paper_arguments(parser)


def _paper_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--out", metavar="FILE.pdf", type=Path, required=True, help="a PDF file that is not there"
    )
    parser.add_argument("--page", choices=("a4", "letter"), default="a4", help="paper, lying on its side")


def _require_pdf(file: Path) -> None:
    if file.suffix.lower() != ".pdf":
        raise LabError(f"{file} does not end in .pdf: give the name of a PDF file")


def _outline(arguments: argparse.Namespace) -> int:
    from lablib.pictures.outline_case import read_case
    from lablib.pictures.outline_sheet import outline_pdf

    _require_pdf(arguments.out)
    places.write_new(arguments.out, outline_pdf(read_case(arguments.what), page=arguments.page))
    print(
        f"Written to {arguments.out}. Print it at 100 %, then measure its line of 100 mm before the outlines "
        "are trusted."
    )
    return 0


def _signoff_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("lesson", metavar="LESSON", help="its number (15)")
    _paper_arguments(parser)


def _signoff(arguments: argparse.Namespace) -> int:
    from lablib.job.signoff import bench_tasks
    from lablib.pictures.signoff_sheet import signoff_pdf

    _require_pdf(arguments.out)
    places.write_new(arguments.out, signoff_pdf(bench_tasks(arguments.lesson), page=arguments.page))
    print(f"Written to {arguments.out}. Print it; whoever saw the work signs it.")
    return 0


def _record_arguments(parser: argparse.ArgumentParser) -> None:
    parser.set_defaults(action=None)
    _learner_argument(parser)
    actions = parser.add_subparsers(metavar="ACTION", title="actions (with none, the record is told)")
    for name, words in (
        ("export", "write the record to a new file, for another machine or for safe keeping"),
        ("import", "take in what another record exported; nothing is taken twice"),
    ):
        action = actions.add_parser(name, help=words, description=words)
        action.add_argument("file", metavar="FILE", type=Path, help="a JSON file")
        action.set_defaults(action=name)
        _learner_argument(action)


def _record(arguments: argparse.Namespace) -> int:
    from lablib.study.record_report import export_to, import_from, record_text

    path = places.record_file()
    if arguments.action is None:
        print(record_text(path, name=places.learner_name()))
    else:
        print({"export": export_to, "import": import_from}[arguments.action](path, arguments.file))
    return 0


# Each line: name, help, a function that adds its arguments, a function that runs it and gives the status.
# The running function imports what it needs itself, so that --help stays quick.
Subcommand = tuple[str, str, Callable[[argparse.ArgumentParser], None], Callable[[argparse.Namespace], int]]
SUBCOMMANDS: tuple[Subcommand, ...] = (
    ("open", "open a lesson in the browser, in a copy of your own", _open_arguments, _open),
    ("job", "work a ticket and print its job sheet", _job_arguments, _job),
    ("outline", "write both outlines of a frame at true size, to print", _outline_arguments, _outline),
    ("signoff", "write a lesson's sign-off sheet for the bench, to print", _signoff_arguments, _signoff),
    ("record", "tell what the learner has answered; export or import it", _record_arguments, _record),
)


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status: 0 done, 2 what was given cannot be worked with, 3 held.

    argv: the words after the program's name; the command line's own when absent.
    """
    for stream in (sys.stdout, sys.stderr):
        # A console that lacks a character shows a question mark for it and not a traceback.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    parser = _parser()
    arguments = parser.parse_args(argv)
    if arguments.version:
        return _print_version()
    if arguments.run is None:
        parser.print_help(sys.stderr)
        return 2
    try:
        if "learner" in arguments:
            # Before anything else: every folder follows from it, and kernels inherit it.
            places.set_learner(arguments.learner)
        status = arguments.run(arguments)
        sys.stdout.flush()
        return status
    except LabError as fault:
        print(fault, file=sys.stderr)
        return 2
    except BrokenPipeError:
        # Whoever was reading has seen enough; nothing more may be written, not even at the end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        # 128 and the number of the interrupt signal, as a shell reports it.
        return 130


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="lablib", description="The apprentice's bench workbook.")
    parser.add_argument("--version", action="store_true", help="print the version and stop")
    parser.set_defaults(run=None)
    commands = parser.add_subparsers(metavar="COMMAND", title="commands")
    for name, words, add_arguments, run in SUBCOMMANDS:
        command = commands.add_parser(name, help=words, description=words)
        add_arguments(command)
        command.set_defaults(run=run)
    return parser


def _print_version() -> int:
    from importlib.metadata import version

    print(f"lablib {version('lablib')}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
