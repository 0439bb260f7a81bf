"""The command that lists what to buy for the dates of a period."""

import argparse

from builder import pipeline
from builder.cache.results import results_known
from builder.compose.supplies.shopping_words import shop_list
from builder.model.supplies.shopping import Period
from builder.refusals import CommandError, no_such
from builder.tasks.place import studio_folder
from builder.tasks.told import report, status_of, today
from builder.terminal.shopping import print_shopping


def shop(options: argparse.Namespace) -> int:
    """Print what to buy for the dates of a period. Raises CommandError."""
    folder, day = studio_folder(options.studio), today(options)
    first, until = max(options.first or day, day), options.until
    if until and until < first:
        raise CommandError(f"--until {until} is before {first}, the first day of the list; past dates need nothing")
    period = Period(first, until, frozenset(options.classes or ()))
    with results_known(folder):
        outcome = pipeline.shop(folder, period, on=day)
    studio = outcome.studio
    if studio:
        for name in sorted(period.classes - set(studio.classes) - outcome.left_out):
            no_such("class", name, studio.classes)
    report(outcome.findings, folder)
    if studio and outcome.shopping:
        print_shopping(shop_list(studio, outcome.shopping))
    return status_of(outcome.findings)
