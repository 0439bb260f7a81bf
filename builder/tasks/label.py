"""Print the labels of one student again."""

import argparse
from collections.abc import Iterator

from builder import pipeline
from builder.cache.results import results_known
from builder.compose.label_again import Again, NotOnTheSheetError
from builder.model.label.label_sheet import LabelSheet
from builder.press.folder import FolderError
from builder.refusals import CommandError, NotDoneError, no_such
from builder.tasks.place import classes_in, studio_and_name
from builder.tasks.told import A_STOP, only, plan_of, report, status_of, today


def label(options: argparse.Namespace) -> int:
    """Write the labels of one place on the roster of a date as a PDF for each size of label, and say where to begin on their sheets.

    Findings that are about the class are told; labels that one of them holds back are not made. Raises CommandError where there is no such
    class, date, place or label of a sheet, and NotDoneError where this machine cannot write the PDF.
    """
    folder, options.for_class = studio_and_name(options.studio, options.for_class)
    options.for_class = name = options.for_class or only(classes_in(folder), "class")
    day = today(options)
    with results_known(folder):
        outcome = pipeline.check(folder, on=day)
    studio = outcome.studio
    if studio is None or name in outcome.left_out:
        report(outcome.findings, folder)
        return status_of(outcome.findings)
    if name not in studio.classes:
        no_such("class", name, studio.classes)
    plan = plan_of(options, outcome)
    if options.place > plan.students:
        many = f"its {plan.students} places are counted from 1" if plan.students else "nobody is enrolled"
        raise CommandError(f"{name} has no place {options.place} on that date: {many}, in the order of the roster")
    try:
        made = pipeline.label_again(outcome, plan, options.place, folder, on=day, first=options.first)
    except NotOnTheSheetError as error:
        raise CommandError(f"--first {options.first}: {error}") from None
    findings = [one for one in outcome.findings if pipeline.concerns(one, name, studio)]
    report(findings, folder)
    if not made:
        print(f"Place {options.place} of {name} has no label that can be printed: nothing was written. `stillroom check` says why.")
        return A_STOP
    try:
        paths = pipeline.press_apart([one.document for one in made], folder, options.to)
    except FolderError as error:
        raise NotDoneError(str(error)) from None
    except OSError as error:
        raise NotDoneError(f"{error.filename}: {error.strerror}" if error.filename else str(error)) from None
    for one, path in zip(made, paths, strict=True):
        print(f"{one.of}: {one.count} {'label' if one.count == 1 else 'labels'} in {path}")
        for line in _where(one):
            print(f"  {line}")
    return status_of(findings)


def _where(one: Again) -> Iterator[str]:
    yield _begins(one.sheet, one.begins)
    if one.behind is not None:
        yield f"The backs: {_begins(one.behind, one.begins_behind)}"


def _begins(sheet: LabelSheet, first: int) -> str:
    if sheet.is_cut:
        return f"Print on plain paper ({sheet.name})" + (f", from label {first} on." if first > 1 else ".")
    row, column = divmod(first - 1, sheet.columns)
    return (
        f'Print on a sheet "{sheet.name}" whose label {first} is free (row {row + 1}, column {column + 1}); --first N begins with another.'
    )
