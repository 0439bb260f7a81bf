"""What the two commands do that need no studio: a page of the reference, and a finding explained. Both give the exit status 0."""

import argparse

from builder import pipeline
from builder.press.folder import FolderError
from builder.reference import explain, find_page, finding_names, pages
from builder.refusals import CommandError, NotDoneError, no_such
from builder.terminal import print_explanation, print_page, print_written


def print_reference(options: argparse.Namespace) -> int:
    """Print a page, or the list of all of them; with `--to` write all as web pages."""
    if options.to is None:
        page = find_page(options.name or pages()[0].key)
        if page is None:
            no_such("page", options.name, [page.key for page in pages()])
        print_page(page)
        return 0
    if options.name is not None:
        raise CommandError("--to writes every page; leave out the name")
    try:
        print_written(pipeline.publish_reference(options.to), options.to)
    except FolderError as error:
        raise NotDoneError(f"{error.wrong} {error.remedy}") from None
    return 0


def explain_finding(options: argparse.Namespace) -> int:
    """Say what a finding means, with an example."""
    explanation = explain(options.name)
    if explanation is None:
        no_such("finding", options.name, finding_names())
    print_explanation(explanation)
    return 0
