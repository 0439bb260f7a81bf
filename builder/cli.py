"""The console command: arguments in, tables and findings out, an exit status. The only file that knows of a terminal.

Exit status: 0 nothing stops, 1 a stop, 2 the command itself was wrong, 3 the machine did not let it be done (rights, a full disk, a stop
from the keyboard). Findings go to stderr, results to stdout.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import NoReturn

from builder import pipeline
from builder.compose.recipe.batch_json import batch_json, class_json
from builder.compose.recipe.card_text import card_lines
from builder.compose.recipe.weigh_table import WeighTable, batch_table
from builder.compose.supplies.shopping_words import shop_list
from builder.compose.supplies.supply_words import batch_lines, class_lines
from builder.compose.teaching.plan_text import plan_lines
from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.recipe.size import ContainersSize, MouldSize, OilsSize, Size, TotalSize
from builder.model.studio import Studio
from builder.model.supplies.shopping import Period
from builder.model.teaching.class_plan import ClassPlan
from builder.read.text.source_lines import SourceLines
from builder.read.text.text_error import AmountError
from builder.read.values.amounts import parse_box, parse_mass
from builder.terminal import Progress, print_card, print_findings, print_published, print_shopping, print_table, print_tally
from builder.words.nearest import did_you_mean

NOTHING_STOPS, A_STOP, WRONG_COMMAND, NOT_DONE = 0, 1, 2, 3


class CommandError(Exception):
    """What is wrong with the command itself, in words for the person who typed it."""


class NotDoneError(Exception):
    """What on this machine keeps a right command from being done, in words for the person who typed it."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and give its exit status."""
    options = _parser().parse_args(arguments)
    try:
        return int(options.run(options))
    except CommandError as error:
        print(f"stillroom: {error}", file=sys.stderr)
        return WRONG_COMMAND
    except NotDoneError as error:
        print(f"stillroom: {error}", file=sys.stderr)
        return NOT_DONE
    except BrokenPipeError:
        # Whoever read our output has stopped reading (`| head`); nothing more can be said to them.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOT_DONE
    except OSError as error:
        at = f"{error.filename}: " if error.filename else ""
        print(f"stillroom: {at}{error.strerror or error}; nothing was changed", file=sys.stderr)
        return NOT_DONE
    except KeyboardInterrupt:
        print("stillroom: stopped; the output folder is as it was", file=sys.stderr)
        return NOT_DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="stillroom", description="Turn a studio folder of recipes and lessons into checked class pages, sheets and labels."
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    publish = commands.add_parser("publish", help="check a studio, then write site/ and print/")
    _studio(publish)
    publish.add_argument("--to", type=Path, metavar="FOLDER", help="the output folder (default: STUDIO/output)")
    publish.add_argument("--only-sound", action="store_true", help="with a stop, still publish what no stop is about")
    publish.set_defaults(run=_publish)

    check = commands.add_parser("check", help="print every finding and write nothing")
    _studio(check)
    check.set_defaults(run=_check)

    weigh = commands.add_parser("weigh", help="work out one recipe at one size, or as it is written")
    _studio(weigh)
    weigh.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/ without its ending")
    size = weigh.add_mutually_exclusive_group()
    size.add_argument("--containers", type=int, metavar="N", help="enough for so many containers")
    size.add_argument("--total", metavar="WEIGHT", help='a batch of this weight, such as "2 kg"')
    size.add_argument("--oils", metavar="WEIGHT", help='a batch with this weight of oils, such as "1 kg"')
    size.add_argument("--mould", metavar="SIZE", help='a batch that fills a mould, such as "30 cm x 8 cm x 7 cm"')
    size.add_argument("--class", dest="for_class", metavar="NAME", help="the batches of a class")
    weigh.add_argument("--date", metavar="DATE", help="with --class: one of its dates, such as 2027-03-06")
    weigh.add_argument("--json", action="store_true", help="print a JSON document with every worked number")
    weigh.set_defaults(run=_weigh)

    plan = commands.add_parser("plan", help="show how a class is taught and watched, and which format suits it")
    _studio(plan)
    plan.add_argument("for_class", metavar="CLASS", help="the name of a folder in classes/")
    plan.add_argument("--date", metavar="DATE", help="one of its dates, such as 2027-03-06")
    plan.set_defaults(run=_plan)

    shop = commands.add_parser("shop", help="list what to buy for all coming dates, or for some of them")
    _studio(shop)
    shop.add_argument("--from", dest="first", type=_day, metavar="DATE", help="leave out the dates before this day")
    shop.add_argument("--until", type=_day, metavar="DATE", help="leave out the dates after this day")
    shop.add_argument("--class", dest="classes", action="extend", nargs="+", metavar="NAME", help="only the dates of these classes")
    shop.set_defaults(run=_shop)

    card = commands.add_parser("card", help="print an ingredient card with its sources")
    card.add_argument("name", metavar="NAME", help="the name of an ingredient")
    card.add_argument("--studio", type=Path, metavar="STUDIO", help="look on this studio's shelf first")
    card.set_defaults(run=_card)
    return parser


def _studio(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("studio", type=Path, metavar="STUDIO", help="the studio folder (it holds studio.yaml)")
    parser.add_argument("--today", type=_day, default=None, metavar="DATE", help="work as on this day, such as 2027-01-31")


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f'"{text}" is not a day; write it as 2027-03-06') from None


def _today(options: argparse.Namespace) -> date:
    return options.today or date.today()  # noqa: DTZ011 (the studio's own day)


def _folder(options: argparse.Namespace) -> Path:
    folder: Path = options.studio
    if not folder.is_dir():
        raise CommandError(f"there is no folder {folder}")
    return folder


def _publish(options: argparse.Namespace) -> int:
    folder = _folder(options)
    output = options.to or folder / "output"
    from builder.press.folder import FolderError

    try:
        with Progress() as progress:
            outcome = pipeline.publish(folder, output, on=_today(options), only_sound=options.only_sound, progress=progress)
    except FolderError as error:
        raise NotDoneError(f"{error.wrong} {error.remedy}") from None
    _report(outcome.findings, folder)
    print_published(outcome, output)
    return _status(outcome.findings)


def _check(options: argparse.Namespace) -> int:
    folder = _folder(options)
    outcome = pipeline.check(folder, on=_today(options))
    _report(outcome.findings, folder)
    print_tally(outcome.findings)
    return _status(outcome.findings)


def _weigh(options: argparse.Namespace) -> int:
    folder = _folder(options)
    if options.for_class:
        return _weigh_class(options, folder)
    if options.date:
        raise CommandError("--date goes with --class")
    outcome = pipeline.weigh(folder, options.recipe, _size(options), on=_today(options))
    if outcome.studio and options.recipe not in outcome.studio.recipes and not outcome.stops:
        _no_such("recipe", options.recipe, outcome.studio.recipes)
    if outcome.refused:
        raise CommandError(outcome.refused)
    _report(outcome.findings, folder)
    if options.json:
        print(json.dumps(batch_json(outcome.batch, outcome.findings, options.recipe), indent=2, ensure_ascii=False))
    elif outcome.batch and outcome.studio:
        print_table(batch_table(outcome.batch, "", batch_lines(outcome.studio, outcome.batch)))
    return _status(outcome.findings)


def _weigh_class(options: argparse.Namespace, folder: Path) -> int:
    outcome = pipeline.check(folder, on=_today(options))
    studio = outcome.studio
    if studio is None:
        _report(outcome.findings, folder)
        return _status(outcome.findings)
    name = options.for_class
    if name not in studio.classes and name not in outcome.left_out:
        _no_such("class", name, studio.classes)
    findings = [finding for finding in outcome.findings if pipeline.concerns(finding, name, studio)]
    sheet = None
    if name in studio.classes and name not in outcome.left_out:
        made = [make.recipe.text for make in studio.classes[name].makes]
        if options.recipe not in made:
            _no_such("recipe", options.recipe, made, f"the class {name} makes")
        _report(findings, folder)
        sheet = _sheet(options, [sheet for sheet in outcome.sheets if sheet.studio_class.key == name])
    else:
        _report(findings, folder)
    if options.json:
        print(json.dumps(class_json(sheet, findings, name, options.recipe), indent=2, ensure_ascii=False))
    elif sheet:
        for table in _class_tables(studio, sheet, options.recipe):
            print_table(table)
    return _status(findings)


def _plan(options: argparse.Namespace) -> int:
    folder = _folder(options)
    outcome = pipeline.check(folder, on=_today(options))
    studio, name = outcome.studio, options.for_class
    if studio is None or name in outcome.left_out:
        _report(outcome.findings, folder)
        return _status(outcome.findings)
    if name not in studio.classes:
        _no_such("class", name, studio.classes)
    findings = [finding for finding in outcome.findings if pipeline.concerns(finding, name, studio)]
    _report(findings, folder)
    for line in plan_lines(studio, _sheet(options, [sheet for sheet in outcome.sheets if sheet.studio_class.key == name])):
        print(line)
    return _status(findings)


def _shop(options: argparse.Namespace) -> int:
    folder, today = _folder(options), _today(options)
    first, until = max(options.first or today, today), options.until
    if until and until < first:
        raise CommandError(f"--until {until} is before {first}, the first day of the list; past dates need nothing")
    period = Period(first, until, frozenset(options.classes or ()))
    outcome = pipeline.shop(folder, period, on=today)
    studio = outcome.studio
    if studio:
        for name in sorted(period.classes - set(studio.classes) - outcome.left_out):
            _no_such("class", name, studio.classes)
    _report(outcome.findings, folder)
    if studio and outcome.shopping:
        print_shopping(shop_list(studio, outcome.shopping))
    return _status(outcome.findings)


def _class_tables(studio: Studio, plan: ClassPlan, recipe: str) -> list[WeighTable]:
    made = next(made for made in plan.made if made.make.recipe.text == recipe)
    more = class_lines(studio, plan, made)
    return [
        batch_table(
            planned.sheet, f"{planned.copies} x for the {planned.purpose}", more if planned is made.batches[-1] else (), planned.also
        )
        for planned in made.batches
    ]


def _sheet(options: argparse.Namespace, sheets: list[ClassPlan]) -> ClassPlan:
    if options.date is None:
        return sheets[0]
    for sheet in sheets:
        if sheet.date and options.date in (sheet.date.on.date().isoformat(), sheet.date.on.isoformat(sep=" ", timespec="minutes")):
            return sheet
    days = ", ".join(sheet.date.on.isoformat(sep=" ", timespec="minutes") for sheet in sheets if sheet.date) or "none"
    raise CommandError(f"{options.for_class} has no date {options.date} to prepare, or a stop holds it back; its dates are: {days}")


def _card(options: argparse.Namespace) -> int:
    ingredients, findings = pipeline.shelf(options.studio)
    card = ingredients.get(" ".join(options.name.split()).casefold())
    if card is None:
        names = sorted({card.name for card in ingredients.values()})
        _no_such("ingredient", options.name, names)
    print_card(card_lines(card))
    return _status(findings)


def _no_such(kind: str, name: str, names: object, where: str = "there is") -> NoReturn:
    known = [str(one) for one in names]  # type: ignore[attr-defined]
    raise CommandError(f'{where} no {kind} "{name}".{did_you_mean(name, known)}')


def _size(options: argparse.Namespace) -> Size | None:
    """Give the size that is asked for; None means the recipe as it is written."""
    try:
        if options.containers is not None:
            if options.containers < 1:
                raise CommandError("--containers needs a whole number of 1 or more")
            return ContainersSize(options.containers)
        if options.total is not None:
            return TotalSize(parse_mass(options.total))
        if options.oils is not None:
            return OilsSize(parse_mass(options.oils))
        return MouldSize(parse_box(options.mould).volume) if options.mould is not None else None
    except AmountError as error:
        raise CommandError(f"{error.wrong} {error.remedy}") from None


def _report(findings: Sequence[Finding], folder: Path) -> None:
    print_findings(findings, SourceLines(folder, CONTENT))


def _status(findings: Sequence[Finding]) -> int:
    return A_STOP if any(finding.stops for finding in findings) else NOTHING_STOPS
