"""Weigh one recipe, at a size or for a class, and plan who weighs how much of what."""

import argparse
import json
from pathlib import Path

from builder import pipeline
from builder.cache.results import results_known
from builder.compose.recipe.weigh_table import WeighTable, batch_table
from builder.compose.supplies.supply_words import batch_lines, class_lines
from builder.model.recipe.size import ContainersSize, MouldSize, OilsSize, Size, TotalSize
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.read.text.text_error import AmountError
from builder.read.values.amounts import parse_box, parse_mass
from builder.refusals import CommandError, no_such
from builder.tasks.place import recipes_in, studio_and_name
from builder.tasks.told import only, plan_of, report, status_of, today
from builder.terminal.tables import print_table


def weigh(options: argparse.Namespace) -> int:
    """Weigh one recipe, and say what was found about it. Raises CommandError."""
    folder, options.recipe = studio_and_name(options.studio, options.recipe)
    if options.for_class:
        return _weigh_class(options, folder)
    options.recipe = options.recipe or only(recipes_in(folder), "recipe")
    if options.date:
        raise CommandError("--date goes with --class")
    with results_known(folder, "recipe"):
        outcome = pipeline.weigh(folder, options.recipe, _size(options), on=today(options))
    if outcome.studio and options.recipe not in outcome.studio.recipes and not outcome.stops:
        no_such("recipe", options.recipe, outcome.studio.recipes)
    if outcome.refused:
        raise CommandError(outcome.refused)
    report(outcome.findings, folder)
    if options.json:
        from builder.compose.recipe.batch_json import batch_json

        print(json.dumps(batch_json(outcome.batch, outcome.findings, options.recipe), indent=2, ensure_ascii=False))
    elif outcome.batch and outcome.studio:
        print_table(batch_table(outcome.batch, "", batch_lines(outcome.studio, outcome.batch)))
    return status_of(outcome.findings)


def _weigh_class(options: argparse.Namespace, folder: Path) -> int:
    with results_known(folder):
        outcome = pipeline.check(folder, on=today(options))
    studio = outcome.studio
    if studio is None:
        report(outcome.findings, folder)
        return status_of(outcome.findings)
    name = options.for_class
    if name not in studio.classes and name not in outcome.left_out:
        no_such("class", name, studio.classes)
    findings = [finding for finding in outcome.findings if pipeline.concerns(finding, name, studio)]
    plan = None
    if name in studio.classes and name not in outcome.left_out:
        made = studio.classes[name].recipe_keys
        options.recipe = options.recipe or only(made, "recipe")
        if options.recipe not in made:
            no_such("recipe", options.recipe, made, f"the class {name} makes")
        report(findings, folder)
        plan = plan_of(options, outcome)
    else:
        report(findings, folder)
    if options.json:
        from builder.compose.recipe.batch_json import class_json

        print(json.dumps(class_json(plan, findings, name, options.recipe), indent=2, ensure_ascii=False))
    elif plan:
        for table in _class_tables(studio, plan, options.recipe):
            print_table(table)
    return status_of(findings)


def _class_tables(studio: Studio, plan: ClassPlan, recipe: str) -> list[WeighTable]:
    made = next(made for made in plan.made if made.make.recipe.text == recipe)
    more = class_lines(studio, plan, made)
    return [
        batch_table(planned.batch, f"{planned.copies} x for the {planned.purpose}", more if planned is made.batches[-1] else ())
        for planned in made.batches
    ]


def _size(options: argparse.Namespace) -> Size | None:
    """Return the size that is asked for; None means the recipe as it is written."""
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
