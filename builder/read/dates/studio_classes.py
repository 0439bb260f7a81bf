"""A file `class.yaml`, with the lesson beside it, becomes a class."""

from dataclasses import replace
from pathlib import PurePosixPath

from builder.model.dates.booking import NO_BOOKING, Booking
from builder.model.dates.studio_class import ClassDate, Make, Picture, StudioClass
from builder.model.finding import Finding
from builder.model.label.earlier_batch import EarlierBatch
from builder.model.picture import heard
from builder.model.place import Name
from builder.model.recipe.size import ToFill
from builder.model.teaching.lesson import Lesson
from builder.read.acceptances import make_acceptances
from builder.read.label.label_sheets import make_label_wishes
from builder.read.recipe.recipes import make_fill
from builder.read.shapes.studio_class import ClassShape, DateShape
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import PlacedYaml


def read_class(placed: PlacedYaml, lesson: Lesson | None, findings: list[Finding]) -> StudioClass | None:
    """Read one class; None where it, or its lesson, cannot be made."""
    shape = fit(ClassShape, placed, findings)
    if shape is None or lesson is None:
        return None
    picture = shape.picture
    return shape.make(
        StudioClass,
        key=PurePosixPath(placed.file).parent.name,
        teachers=shape.staff.teachers,
        assistants=shape.staff.assistants,
        makes=tuple(_make(name, shape, placed) for name in shape.makes),
        lesson=lesson,
        dates=tuple(_date(number, date, placed) for number, date in enumerate(shape.dates)),
        picture=Picture(Name(picture.file, placed.place("picture", "file")), heard(picture.alt)) if picture else None,
        sheets_are_public=shape.sheets == "public",
        booking=shape.booking.make(Booking) if shape.booking else NO_BOOKING,
        labels=make_label_wishes(shape.labels, placed),
        accepts=make_acceptances(shape.accepts, placed),
        place=placed.place("title"),
        places=placed.places(),
    )


def _date(number: int, date: DateShape, placed: PlacedYaml) -> ClassDate:
    return date.make(
        ClassDate,
        staff=(date.staff.teachers, date.staff.assistants) if date.staff else None,
        labels=date.labels.make(EarlierBatch, place=placed.place("dates", number, "labels", "made on")) if date.labels else None,
        place=placed.place("dates", number, "on"),
        places=placed.places("dates", number),
    )


def _make(name: str, shape: ClassShape, placed: PlacedYaml) -> Make:
    make = shape.makes[name]
    sizes = tuple(replace(size, place=placed.place("makes", name, "at home", number)) for number, size in enumerate(make.at_home))
    return Make(
        recipe=Name(name, placed.key_place("makes", name)),
        batch_for=make.batch_for,
        each_student=make.each_student.number,
        spare=make.spare.number,
        demo=make.demo,
        left_in_the_pot=make.left_in_the_pot,
        left_in_each_cup=make.left_in_each_cup,
        also=tuple(
            ToFill(make_fill(one, placed, ("makes", name, "also fills", number)), one.each_student.number, one.spare.number)
            for number, one in enumerate(make.also_fills)
        ),
        at_home=sizes,
        place=placed.key_place("makes", name),
    )
