"""`stillroom guide`: its pages on the terminal or as web pages, and the files of a worked example. Exit status 0."""

import argparse

from builder.guide import files_of, find_guide_page, guide_pages
from builder.press.folder import FolderError
from builder.press.new_files import AlreadyThereError, write_new_files
from builder.reference import Page
from builder.refusals import CommandError, NotDoneError, no_such
from builder.terminal.consoles import open_console, say
from builder.terminal.progress import Progress
from builder.terminal.reference import print_page, print_written


def guide(options: argparse.Namespace) -> int:
    """Print a page, or the list of all; with `--to` write them as web pages, with `--files` write the studio that a page shows."""
    if options.to is not None:
        if options.name is not None or options.files is not None:
            raise CommandError("--to writes every page; leave out the name and --files")
        return _write(options)
    page = _page(options.name)
    if options.files is None:
        print_page(page)
        return 0
    files = files_of(page.text)
    if not files:
        raise CommandError(f'the page "{page.key}" shows no studio; name a worked example')
    try:
        write_new_files(options.files, files)
    except AlreadyThereError as error:
        raise CommandError(f"{error} is there already, and nothing is written over it; name a new folder") from None
    for name in files:
        say(open_console(), f"  {options.files / name}")
    return 0


def _page(name: str | None) -> Page:
    if name is None:
        return guide_pages()[0]
    page = find_guide_page(name)
    if page is None:
        no_such("page of the guide", name, [page.key for page in guide_pages()])
    return page


def _write(options: argparse.Namespace) -> int:
    from builder.guide.making import write_guide

    try:
        with Progress() as progress:
            progress.start(len(guide_pages()))
            written = write_guide(options.to, progress.step)
    except FolderError as error:
        raise NotDoneError(f"{error.wrong} {error.remedy}") from None
    print_written(written, options.to)
    say(open_console(), f"Open {options.to / 'site' / 'guide.html'} in a browser.")
    return 0
