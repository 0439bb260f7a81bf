"""Check a studio, and publish it."""

import argparse
from datetime import date
from pathlib import Path

from builder.cache.uncollected import uncollected
from builder.refusals import NotDoneError
from builder.tasks.known_runs import KnownRun, Run
from builder.tasks.place import studio_folder
from builder.tasks.told import report, status_of, today
from builder.terminal.consoles import open_console, say
from builder.terminal.findings import tally


def check(options: argparse.Namespace) -> int:
    """Check a studio, and say what was found; with `--reading` also how its sheets read."""
    folder, day = studio_folder(options.studio), today(options)
    if options.reading:
        return _check_reading(folder, day)
    run = Run.begin(["check"], folder, folder / "output", day)
    known = run.find()
    if known is None:
        with uncollected():  # what is loaded stays too
            from builder import pipeline
            from builder.cache.results import results_known

            with results_known(folder, else_of=("publication",)):
                outcome = pipeline.check(folder, on=day)
        known = KnownRun(outcome.findings, (tally(outcome.findings),))
        run.keep(known, outcome.studio)
    report(known.findings, folder)
    _say(known)
    return status_of(known.findings)


def _check_reading(folder: Path, day: date) -> int:
    """Check a studio, then say how each sheet reads that people follow with their hands: of a class those of its first date."""
    from builder import pipeline
    from builder.compose.for_staff.mending_report import mending_lines
    from builder.compose.for_staff.reading_report import Explained, kinds_read, notes, reading_lines
    from builder.compose.for_staff.steps_report import steps_by_name
    from builder.reference.terms import terms
    from builder.words.say import speaking

    outcome, documents = pipeline.preview(folder, on=day)
    report(outcome.findings, folder)
    if outcome.studio is None or documents is None:
        return status_of(outcome.findings)
    words = [Explained(term.name, term.also_called, term.on_sheets) for term in terms() if term.on_sheets]
    speaks, kinds = outcome.studio.speaks, kinds_read()
    seen: set[tuple[str, str]] = set()
    for path, entry in documents.entries.items():
        of_a_date = entry.kind != "take-home page"
        if entry.kind not in kinds or (of_a_date and (entry.kind, entry.class_key) in seen):
            continue
        seen.add((entry.kind, entry.class_key))
        with speaking(speaks.messages):
            made = entry.make()
        studio_class = outcome.studio.classes[entry.class_key]
        lines = list(reading_lines(made.html, words, steps_by_name(studio_class), in_english=speaks.is_own)) if made else []
        if lines and not of_a_date and speaks.is_own:
            lines += mending_lines(outcome.studio, studio_class, outcome.studio.recipes[entry.recipe_key])
        if lines:
            print("\n".join((path, *(f"  {line}" for line in lines))))
    print("\n".join(notes(in_english=speaks.is_own)))
    return status_of(outcome.findings)


def publish(options: argparse.Namespace) -> int:
    """Publish a studio. Raises NotDoneError where its output cannot be written."""
    folder, day = studio_folder(options.studio), today(options)
    output = options.to or folder / "output"
    run = Run.begin(["publish", *(["only sound"] if options.only_sound else [])], folder, output, day)
    known = run.find()
    if known is None:
        from builder import pipeline
        from builder.cache.results import results_known
        from builder.press.folder import FolderError
        from builder.terminal.progress import Progress
        from builder.terminal.results import told_lines, unchanged_lines, written_lines

        try:
            with Progress() as progress:
                outcome = pipeline.publish(
                    folder,
                    output,
                    on=day,
                    only_sound=options.only_sound,
                    progress=progress,
                    known=results_known(folder, "publication", ("studio",)),
                )
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
