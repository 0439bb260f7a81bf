"""Print who weighs how much of what for which pot of a class."""

import argparse

from builder import pipeline
from builder.cache.results import results_known
from builder.compose.teaching.plan_text import plan_lines
from builder.refusals import no_such
from builder.tasks.place import classes_in, studio_and_name
from builder.tasks.told import only, plan_of, report, status_of, today


def plan(options: argparse.Namespace) -> int:
    """Print the weighing plan of one date of a class."""
    folder, options.for_class = studio_and_name(options.studio, options.for_class)
    options.for_class = options.for_class or only(classes_in(folder), "class")
    with results_known(folder):
        outcome = pipeline.check(folder, on=today(options))
    studio, name = outcome.studio, options.for_class
    if studio is None or name in outcome.left_out:
        report(outcome.findings, folder)
        return status_of(outcome.findings)
    if name not in studio.classes:
        no_such("class", name, studio.classes)
    findings = [finding for finding in outcome.findings if pipeline.concerns(finding, name, studio)]
    report(findings, folder)
    for line in plan_lines(studio, plan_of(options, outcome)):
        print(line)
    return status_of(findings)
