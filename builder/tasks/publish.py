"""Check a studio, and publish it."""

import argparse

from builder.refusals import NotDoneError
from builder.tasks.known_runs import KnownRun, Run
from builder.tasks.place import studio_folder
from builder.tasks.told import report, status_of, today
from builder.terminal.consoles import open_console, say
from builder.terminal.findings import tally


def check(options: argparse.Namespace) -> int:
    """Check a studio, and say what was found."""
    folder, day = studio_folder(options.studio), today(options)
    run = Run.begin(["check"], folder, folder / "output", day)
    known = run.find()
    if known is None:
        from builder import pipeline

        outcome = pipeline.check(folder, on=day)
        known = KnownRun(outcome.findings, (tally(outcome.findings),))
        run.keep(known, outcome.studio)
    report(known.findings, folder)
    _say(known)
    return status_of(known.findings)


def publish(options: argparse.Namespace) -> int:
    """Publish a studio. Raises NotDoneError where its output cannot be written."""
    folder, day = studio_folder(options.studio), today(options)
    output = options.to or folder / "output"
    run = Run.begin(["publish", *(["only sound"] if options.only_sound else [])], folder, output, day)
    known = run.find()
    if known is None:
        from builder import pipeline
        from builder.press.folder import FolderError
        from builder.terminal.progress import Progress
        from builder.terminal.results import told_lines, unchanged_lines, written_lines

        try:
            with Progress() as progress:
                outcome = pipeline.publish(folder, output, on=day, only_sound=options.only_sound, progress=progress)
        except FolderError as error:
            raise NotDoneError(f"{error.wrong} {error.remedy}") from None
        told = tuple(told_lines(outcome))
        if outcome.pressed is None or outcome.pressed.pdf_missing is None:
            run.keep(KnownRun(outcome.findings, (*unchanged_lines(outcome, output), *told)), outcome.studio)
        known = KnownRun(outcome.findings, (*written_lines(outcome, output), *told))
    report(known.findings, folder)
    _say(known)
    return status_of(known.findings)


def _say(known: KnownRun) -> None:
    console = open_console()
    for line in known.lines:
        say(console, line)
