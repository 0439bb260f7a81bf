"""The batches of a class sheet, one by one, as the rules on sheets look at them."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet
from builder.model.figure import Figure
from builder.model.studio import Studio

_PURPOSE = {
    "class": "the class batch",
    "group": "the batch of one group",
    "student": "the batch of one student",
    "teacher": "the teacher's batch",
}


@dataclass(frozen=True)
class Batch:
    """One batch with what a finding says of it: which batch it is (`what`), and the classes that it holds back (`about`)."""

    what: str
    about: frozenset[str]
    sheet: BatchSheet
    constants: Mapping[str, Figure]


def batch_of(what: str, sheet: BatchSheet, studio: Studio, about: frozenset[str] = frozenset()) -> Batch:
    """Give one batch with what the rules need of the studio."""
    return Batch(what, about, sheet, studio.constants)


def batches_of(sheet: ClassSheet, studio: Studio) -> Iterator[Batch]:
    """Give every batch of a class: those made in class, then those for home."""
    about = frozenset({sheet.studio_class.key})
    for made in sheet.made:
        name = made.batch.recipe.name
        for planned in made.batches:
            people = f" for {sheet.students} students" if planned.purpose == "class" else ""
            yield batch_of(f"{name}, {_PURPOSE[planned.purpose]}{people}", planned.sheet, studio, about)
        for home in made.home:
            yield batch_of(f"{name}, the home batch of {home.size.written}", home.sheet, studio, about)
