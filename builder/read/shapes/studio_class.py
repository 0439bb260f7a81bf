"""The shape of `classes/NAME/class.yaml`."""

from typing import Annotated

from builder.model.dates.studio_class import BatchFor, Format, HomeSize
from builder.model.recipe.quantity import NO_MASS, Count
from builder.read.recipe.home_sizes import parse_home_size
from builder.read.shapes.fields import (
    NOT_EMPTY,
    AllergenFamilies,
    Date,
    DateOrDates,
    Price,
    Text,
    Texts,
    Things,
    ThingsOrNone,
    Time,
    WeightOrNone,
    Whole,
    WholeAboveZero,
    reads,
)
from builder.read.shapes.labels import LabelWishesShape
from builder.read.shapes.recipe import FillShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.values.values import member_of, parse_cancelled, word_of


class StaffShape(Shape):
    """Who teaches."""

    teachers: Whole = needed("teachers", "1")
    assistants: Whole = maybe("assistants", 0)


class AlsoFillShape(FillShape):
    """A second container that the same batch fills."""

    each_student: Things = needed("each student", "1 container")
    spare: ThingsOrNone = maybe("spare", Count(0))


class MakeShape(Shape):
    """How much of one recipe a class makes."""

    batch_for: Annotated[BatchFor, reads(member_of(BatchFor))] = maybe("batch", BatchFor.CLASS)
    each_student: Things = needed("each student", "1 container")
    spare: ThingsOrNone = maybe("spare", Count(0))
    demo: WeightOrNone = maybe("demo", NO_MASS)
    left_in_the_pot: WeightOrNone = maybe("left in the pot", NO_MASS)
    left_in_each_cup: WeightOrNone = maybe("left in each cup", NO_MASS)
    also_fills: tuple[AlsoFillShape, ...] = maybe("also fills", (), "[{container: 2 fl oz jar, weight: 55 g, each student: 1 container}]")
    at_home: tuple[Annotated[HomeSize, reads(parse_home_size)], ...] = maybe("at home", (), "[250 g, 4 containers]")


class DateShape(Shape):
    """One date of a class."""

    on: Date = needed("on", "2027-03-06 10:00")
    enrolled: Whole = maybe("enrolled", 0)
    staff: StaffShape | None = maybe("staff", example="{teachers: 1, assistants: 3}")
    first_label: WholeAboveZero = maybe("first label", 1)
    waiting: Whole = maybe("waiting", 0)
    moved_from: DateOrDates = maybe("moved from", (), "2027-02-27 10:00")
    cancelled: Annotated[str | None, reads(parse_cancelled)] = maybe("cancelled", None, "yes")
    revision: Whole = maybe("revision", 0)


class PictureShape(Shape):
    """The picture of a class."""

    file: Text = needed("file", "lotion.svg")
    alt: Text = needed("alt", "what the picture shows")


class ClassShape(Shape):
    """One class."""

    title: Text = needed("title", "A lotion from scratch")
    format: Annotated[Format, reads(member_of(Format))] = needed("format", "hands-on")
    summary: Text = needed("summary", "One or two sentences for the catalogue.")
    for_whom: Text = needed("for", "adults, beginners")
    goal: Annotated[str, reads(word_of("fun", "learn to make at home", "learn to sell"))] = needed("goal", "learn to make at home")
    youngest: Whole = needed("youngest", "14")
    length: Time = needed("length", "2 h")
    seats: WholeAboveZero = needed("seats", "12")
    price: Price = needed("price", "48.00")
    staff: StaffShape = needed("staff", "{teachers: 1, assistants: 1}")
    group_size: WholeAboveZero = maybe("group size", 1)
    makes: Annotated[dict[str, MakeShape], NOT_EMPTY] = needed("makes", "{juniper-hand-lotion: {each student: 1 container}}")
    wear: Texts = maybe("wear", (), "[an apron, closed shoes]")
    on_each_bench: Texts = maybe("on each bench", (), "[a scale, a hot plate]")
    on_the_demo_table: Texts = maybe("on the demo table", (), "[a scale, a slow cooker]")
    at_the_sink: Texts = maybe("at the sink", (), "[paper towels, a bin with a bag]")
    take_home: Text = maybe("take home", "")
    free_from: AllergenFamilies = maybe("free from", (), "[tree nut]")
    picture: PictureShape | None = maybe("picture", example="{file: lotion.svg, alt: what the picture shows}")
    sheets: Annotated[str, reads(word_of("public", "studio"))] = maybe("take-home sheets", "studio")
    labels: LabelWishesShape | None = maybe("labels", example="{sheet: letter 2 x 4, panels: 2}")
    dates: tuple[DateShape, ...] = maybe("dates", (), "[{on: 2027-03-06 10:00, enrolled: 9}]")
    accepts: dict[str, Text] = maybe("accepts", {}, "{name-of-the-finding: the reason in a sentence}")
