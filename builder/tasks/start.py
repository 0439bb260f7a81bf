"""`stillroom start`: the questions, the files, and what comes next. Exit status 0 where nothing of what was written stops."""

import argparse
import shlex
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TypeVar

from builder import pipeline
from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.studio import Studio
from builder.press.new_files import AlreadyThereError, write_new_files
from builder.read.text.source_lines import SourceLines
from builder.reference.schemas import editor_files, marked
from builder.refusals import CommandError
from builder.start import answers
from builder.start.files import Files, NewStudio, Workshop, class_files, recipe_file, studio_file
from builder.start.starters import OWN_KIND, STUDIO, ScaleStart, has_starter, other_words_for_regions, region_start
from builder.tasks.drafts import library_of, studio_of
from builder.terminal.consoles import open_console, say
from builder.terminal.findings import print_findings, print_tally
from builder.terminal.questions import ask, show
from builder.words.within import within

T = TypeVar("T")
_OF_YOUR_OWN = " What is none of these begins as the nearest; `stillroom reference products.yaml` says how it becomes a kind of its own."
_NAME, _MAIL, _PRODUCT = "My studio", "hello@example.org", "cold-process soap"


@dataclass(frozen=True)
class Wishes:
    """What a teacher wants to begin with: her studio, and the first thing that is made in it."""

    studio: NewStudio
    product: str
    made: str


def start(options: argparse.Namespace) -> int:
    """Begin a studio in a folder that is new or empty. Raises CommandError."""
    folder: Path = options.folder
    if folder.exists() and (not folder.is_dir() or any(not path.name.startswith(".") for path in folder.iterdir())):
        raise CommandError(f"{folder} is there already and holds something; name a new folder. `stillroom add` adds to a studio")
    wishes = _wishes(options)
    files = dict(studio_file(wishes.studio))
    shop = workshop(studio_of(files))
    recipe = recipe_file(wishes.made, wishes.product, shop)
    files |= recipe
    files |= class_of(studio_of(files), f"Your first {wishes.product}", next(iter(recipe)), shop)
    write(folder, files | editor_files(studio_of(files)))
    console = open_console()
    say(console, f"A studio has begun in {folder}:")
    for name in files:
        say(console, f"  {folder / name}")
    found = report(folder)
    for line in _what_next(folder, wishes.studio, [one for one in found if one.accepted is not None]):
        say(console, line)
    return status_of(found)


def _what_next(folder: Path, studio: NewStudio, accepted: Sequence[Finding]) -> Iterator[str]:
    usual = (
        ("name", studio.name, _NAME),
        ("address", studio.address, region_start(studio.region).address),
        ("mail address", studio.email, _MAIL),
    )
    not_yet = [what for what, is_now, was in usual if is_now == was]
    if not_yet:
        yield f"Not yet yours, and to be put into {folder / STUDIO} before anything is printed: {', '.join(not_yet)}."
    for finding in accepted:
        yield f"Accepted for now: {finding.name}; {folder / finding.place.file} says at its end what to do about it."
    yield "Put your own words and numbers into these files. Then, for example:"
    yield f"  cd {shlex.quote(str(folder))}"
    yield "  stillroom check                            what is found in them"
    yield "  stillroom preview                          the same in a browser, renewed at each save"
    yield "  stillroom publish                          pages to upload, sheets and labels to print"
    yield '  stillroom add date "2027-03-06 10:00"      when people come'
    yield '  stillroom add recipe "..."                 what else you make'


def _wishes(options: argparse.Namespace) -> Wishes:
    """Take each answer from its option, else from who sits there, else what is usual."""
    asks = not options.plain and sys.stdin.isatty()
    if not asks and not options.plain:
        missing = [f"--{key}" for key in ("name", "region", "product") if getattr(options, key) is None]
        if missing:
            raise CommandError(f"there is nobody to ask here; give {' and '.join(missing)}, or --plain")

    def answer(key: str, question: str, read: Callable[[str], T], usual: str) -> T:
        given = getattr(options, key)
        if given is not None or not asks:
            return read_option(f"--{key}", read, usual if given is None else given)
        return ask(question, read, usual)

    library = library_of(None)
    regions, kinds = tuple(library.regions), tuple(name for name in library.products if has_starter(name))
    name = answer("name", "What is your studio called?", answers.read_text, "" if asks else _NAME)
    region_of = answers.one_of(regions, "region known here", other_words_for_regions())
    region = answer("region", f"Whose rules hold where you are: {', '.join(regions)}?", region_of, regions[0])
    usual = region_start(region)
    ends = ", with the country at the end" if library.regions[region].person_within else ""
    where = f"Where is it? The lines of the address, parted by semicolons{ends}. It stands on labels."
    address = answer("address", where, answers.read_lines, "; ".join(usual.address))
    email = answer("email", "At which mail address do people reach you? It stands on labels too.", answers.read_mail, _MAIL)
    units_of = answers.one_of(answers.UNITS, "unit to weigh in here", answers.OTHER_UNITS)
    units = answer("units", "Do you weigh in grams or in ounces?", units_of, "ounces" if usual.in_ounces else "grams")
    scales = _scales(options, units, asks)
    if asks and options.product is None:
        show([f"  {number:>2} {kind}" for number, kind in enumerate(kinds, 1)])
    kind_of = answers.one_of(kinds, "kind of product that can be begun here", library.synonyms.kinds, listed=asks, more=_OF_YOUR_OWN)
    product = answer("product", "What do you want to make first? A number or a name of this list.", kind_of, _PRODUCT)
    made = answer("called", "What do you call it?", answers.read_text, f"First {product}")
    return Wishes(NewStudio(name, address, email, region, scales), product, made)


def _scales(options: argparse.Namespace, units: str, asks: bool) -> tuple[ScaleStart, ...]:
    if options.scale or not asks:
        given = [read_option("--scale", answers.read_scale, text) for text in options.scale or ()]
        return read_option("--scale", lambda _: answers.scales_of(given, units), "")
    told: list[ScaleStart] = []
    question = 'What does your scale show, and how much does it hold? For example "0.1 g up to 5 kg".'
    while True:
        one = ask(question, lambda text: answers.read_scale(text) if text else None, "" if told else "0.1 g up to 5 kg")
        told += [one] if one else []
        try:
            # Who has no scale in ounces weighs in grams.
            scales = answers.scales_of(told, units if one else "grams")
        except ValueError as error:
            question = str(error)
            continue
        if one is None:
            return scales
        question = "Another scale? (nothing: no)"


def read_option(option: str, read: Callable[[str], T], text: str) -> T:
    """Read an option; what cannot be read is a CommandError."""
    try:
        return read(text)
    except ValueError as error:
        raise CommandError(f"{option}: {error}") from None


def workshop(studio: Studio) -> Workshop:
    """Return what the files of a studio go by: ounces where one of its scales reads in them, French where its labels have to."""
    return Workshop(
        in_ounces=any(scale.unit == "oz" for scale in studio.profile.scales),
        in_american=region_start(studio.profile.region).in_american,
        in_french=any(language.name == "French" for language in studio.label_languages),
        writes_french=studio.profile.language == "French",
    )


def class_of(studio: Studio, title: str, recipe_file_name: str, shop: Workshop) -> Files:
    """Return the files of a class that makes a recipe."""

    def called(name: str) -> str:
        card = studio.ingredient(name)
        # "Soap base, clear" is for a list; in a sentence it is called "clear soap base".
        return within(next((one for one in (card.name, *card.also_called) if "," not in one), card.name)) if card else name

    recipe = studio.recipes[Path(recipe_file_name).stem]
    begins_as = recipe.product if has_starter(recipe.product) else OWN_KIND
    return class_files(title, recipe, begins_as, called, studio.ingredient, shop)


def write(folder: Path, files: Files) -> None:
    """Write new files; raise CommandError where one is there."""
    try:
        write_new_files(folder, marked(files))
    except AlreadyThereError as error:
        raise CommandError(f"{error} is there already, and nothing is written over it; choose another name") from None


def report(folder: Path, changed: Sequence[str] = ()) -> Sequence[Finding]:
    """Check the studio as it is now, and say and give what is found.

    With the files that were changed only what stops, and what is about them and what they make, is said; the rest is counted.
    """
    outcome = pipeline.check(folder, on=date.today())  # noqa: DTZ011 (the studio's own day)
    found: list[Finding] = [one for one in outcome.findings if one.accepted is None]
    shown = [one for one in found if one.stops or _concerned(one, changed, outcome.studio)] if changed else found
    print_findings(shown, SourceLines(folder, CONTENT))
    print_tally(outcome.findings)
    if len(shown) < len(found):
        more = len(found) - len(shown)
        say(open_console(), f"{more} {'caution is' if more == 1 else 'cautions are'} about something else; `stillroom check` shows all.")
    return outcome.findings


def _concerned(finding: Finding, changed: Sequence[str], studio: Studio | None) -> bool:
    """Tell whether a finding is in a file that was changed, or in a recipe that a class among them makes."""
    made = {
        f"recipes/{make.recipe.text}.yaml"
        for one in (studio.classes.values() if studio else ())
        if f"classes/{one.key}/class.yaml" in changed
        for make in one.makes
    }
    return finding.place.file in made.union(changed)


def status_of(findings: Sequence[Finding]) -> int:
    """Return the exit status: 1 where something stops."""
    return 1 if any(finding.stops for finding in findings) else 0
