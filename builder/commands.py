"""What each command does with its arguments: results to stdout, findings to stderr, and the exit status.

Kept apart from `cli.py`, since loading all that is needed here takes far longer than to say how a command is written.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable, Mapping, Sequence
from datetime import date
from pathlib import Path

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
from builder.refusals import CommandError, NotDoneError, no_such
from builder.tasks.look_up import explain_name, list_names, print_reference
from builder.tasks.place import classes_in, recipes_in, studio_and_name, studio_around, studio_folder
from builder.terminal import Progress, print_card, print_findings, print_published, print_shopping, print_table, print_tally

NOTHING_STOPS, A_STOP = 0, 1


def _today(options: argparse.Namespace) -> date:
    return options.today or date.today()  # noqa: DTZ011 (the studio's own day)


def _folder(options: argparse.Namespace) -> Path:
    return studio_folder(options.studio)


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
    folder, options.recipe = studio_and_name(options.studio, options.recipe)
    options.recipe = options.recipe or _only(recipes_in(folder), "recipe")
    if options.for_class:
        return _weigh_class(options, folder)
    if options.date:
        raise CommandError("--date goes with --class")
    outcome = pipeline.weigh(folder, options.recipe, _size(options), on=_today(options))
    if outcome.studio and options.recipe not in outcome.studio.recipes and not outcome.stops:
        no_such("recipe", options.recipe, outcome.studio.recipes)
    if outcome.refused:
        raise CommandError(outcome.refused)
    _report(outcome.findings, folder)
    if options.json:
        print(json.dumps(batch_json(outcome.batch, outcome.findings, options.recipe), indent=2, ensure_ascii=False))
    elif outcome.batch and outcome.studio:
        print_table(batch_table(outcome.batch, "", batch_lines(outcome.studio, outcome.batch)))
    return _status(outcome.findings)


def _only(names: Sequence[str], what: str) -> str:
    """Give the name of the only recipe or class of a studio. Raises CommandError where there is none, or more than one."""
    if len(names) != 1:
        several = f"say which {what}: {', '.join(names)}" if names else f"there is no {what} yet; `stillroom add {what}` begins one"
        raise CommandError(several)
    return names[0]


def _weigh_class(options: argparse.Namespace, folder: Path) -> int:
    outcome = pipeline.check(folder, on=_today(options))
    studio = outcome.studio
    if studio is None:
        _report(outcome.findings, folder)
        return _status(outcome.findings)
    name = options.for_class
    if name not in studio.classes and name not in outcome.left_out:
        no_such("class", name, studio.classes)
    findings = [finding for finding in outcome.findings if pipeline.concerns(finding, name, studio)]
    sheet = None
    if name in studio.classes and name not in outcome.left_out:
        made = studio.classes[name].recipe_keys
        if options.recipe not in made:
            no_such("recipe", options.recipe, made, f"the class {name} makes")
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
    folder, options.for_class = studio_and_name(options.studio, options.for_class)
    options.for_class = options.for_class or _only(classes_in(folder), "class")
    outcome = pipeline.check(folder, on=_today(options))
    studio, name = outcome.studio, options.for_class
    if studio is None or name in outcome.left_out:
        _report(outcome.findings, folder)
        return _status(outcome.findings)
    if name not in studio.classes:
        no_such("class", name, studio.classes)
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
            no_such("class", name, studio.classes)
    _report(outcome.findings, folder)
    if studio and outcome.shopping:
        print_shopping(shop_list(studio, outcome.shopping))
    return _status(outcome.findings)


def _class_tables(studio: Studio, plan: ClassPlan, recipe: str) -> list[WeighTable]:
    made = next(made for made in plan.made if made.make.recipe.text == recipe)
    more = class_lines(studio, plan, made)
    return [
        batch_table(planned.sheet, f"{planned.copies} x for the {planned.purpose}", more if planned is made.batches[-1] else ())
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
    ingredients, findings = pipeline.shelf(options.studio or studio_around(Path.cwd()))
    card = ingredients.get(" ".join(options.name.split()).casefold())
    if card is None:
        names = sorted({card.name for card in ingredients.values()})
        no_such("ingredient", options.name, names)
    print_card(card_lines(card))
    return _status(findings)


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


def _start(options: argparse.Namespace) -> int:
    from builder.tasks.start import start

    return start(options)


def _add(options: argparse.Namespace) -> int:
    from builder.tasks.add import add

    return add(options)


def _editor(options: argparse.Namespace) -> int:
    from builder.tasks.editor import write_for_editors

    return write_for_editors(options)


def _completion(options: argparse.Namespace) -> int:
    from builder.tasks.completion import shell_code

    print(shell_code(options.shell))
    return NOTHING_STOPS


RUN: Mapping[str, Callable[[argparse.Namespace], int]] = {
    "start": _start,
    "add": _add,
    "editor": _editor,
    "completion": _completion,
    "publish": _publish,
    "check": _check,
    "weigh": _weigh,
    "plan": _plan,
    "shop": _shop,
    "card": _card,
    "reference": print_reference,
    "explain": explain_name,
    "list": list_names,
}
