"""Check a studio, and publish it."""

import argparse

from builder import pipeline
from builder.refusals import NotDoneError
from builder.tasks.told import folder_of, report, status_of, today
from builder.terminal.findings import print_tally


def check(options: argparse.Namespace) -> int:
    """Check a studio, and say what was found."""
    folder = folder_of(options)
    outcome = pipeline.check(folder, on=today(options))
    report(outcome.findings, folder)
    print_tally(outcome.findings)
    return status_of(outcome.findings)


def publish(options: argparse.Namespace) -> int:
    """Publish a studio. Raises NotDoneError where its output cannot be written."""
    folder = folder_of(options)
    output = options.to or folder / "output"
    from builder.press.folder import FolderError
    from builder.terminal.progress import Progress
    from builder.terminal.results import print_published

    try:
        with Progress() as progress:
            outcome = pipeline.publish(folder, output, on=today(options), only_sound=options.only_sound, progress=progress)
    except FolderError as error:
        raise NotDoneError(f"{error.wrong} {error.remedy}") from None
    report(outcome.findings, folder)
    print_published(outcome, output)
    return status_of(outcome.findings)
