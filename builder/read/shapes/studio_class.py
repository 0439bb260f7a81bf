"""The shape of `classes/NAME/class.yaml`."""

from collections.abc import Iterator
from typing import Annotated, Self

from pydantic import model_validator

from builder.model.dates.studio_class import BatchFor, ClassDate, Format, Goal, HomeSize, Make, Picture, StudioClass
from builder.model.label.earlier_batch import EarlierBatch
from builder.model.picture import heard
from builder.model.place import Name
from builder.model.recipe.quantity import NO_MASS, Count
from builder.model.recipe.recipe import Fill
from builder.model.recipe.size import ToFill
from builder.read.makes import Makes, becomes
from builder.read.recipe.home_sizes import parse_home_size
from builder.read.shapes.booking import BookingShape
from builder.read.shapes.fields import (
    NOT_EMPTY,
    AllergenFamilies,
    Date,
    DateOrDates,
    DayOrDays,
    Named,
    People,
    PeopleAboveZero,
    Price,
    Reason,
    Text,
    Texts,
    Things,
    ThingsOrNone,
    Time,
    WebAddress,
    Weight,
    WeightOrNone,
    Whole,
    WholeAboveZero,
    reads,
)
from builder.read.shapes.labels import LabelWishesShape
from builder.read.shapes.recipe import PortionShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.values.values import either_of, member_of, parse_cancelled

# More is a slip of the keyboard, and every container would be labelled. Our own bound, far above any class of a studio.
MOST_CONTAINERS = 5_000
At = tuple[str | int, ...]


class StaffShape(Shape):
    """Who teaches."""

    teachers: People = needed("teachers", "1")
    """How many teachers there are."""
    assistants: People = maybe("assistants", 0, example="1")
    """How many assistants there are. They count like teachers for who watches whom."""


class AlsoFillShape(PortionShape, Makes[ToFill]):
    """A second container that the same batch fills."""

    each_student: Things = needed("each student", "1 container")
    """How many of this second container each student fills."""
    spare: ThingsOrNone = maybe("spare", Count(0), example="2 containers")
    """How many more are filled."""

    @becomes("fill")
    def _fill(self, placed: PlacedData) -> Fill:
        return self.made_as(Fill, placed)


class MakeShape(Shape, Makes[Make]):
    """How much of one recipe a class makes."""

    batch_for: Annotated[BatchFor, reads(member_of(BatchFor))] = maybe("batch", BatchFor.CLASS, example="one for each group")
    """Who makes a batch of their own: the class together, each group, or each student."""
    each_student: Things = needed("each student", "1 container")
    """How many containers each student takes home."""
    spare: ThingsOrNone = maybe("spare", Count(0), example="2 containers")
    """How many more are filled."""
    demo: WeightOrNone = maybe("demo", NO_MASS, example="50 g")
    """A weight that is made to show and fills no container."""
    left_in_the_pot: WeightOrNone = maybe("left in the pot", NO_MASS, example="40 g")
    """What sticks to the pot of the full class. For each home size it is counted as a film that shrinks with its surface."""
    left_in_each_cup: WeightOrNone = maybe("left in each cup", NO_MASS, example="1 g")
    """What sticks to the cup from which a portion is poured; `{cup}` in a lesson is the portion with this on top."""
    also: tuple[AlsoFillShape, ...] = maybe("also fills", (), "[{container: 2 fl oz jar, weight: 55 g, each student: 1 container}]")
    """A second container from the same batch."""
    at_home: tuple[Annotated[HomeSize, reads(parse_home_size)], ...] = maybe("at home", (), "[250 g, 4 containers]")
    """The sizes for take-home sheets: a weight in all, a weight `of oils`, or a number of containers."""

    @becomes("recipe")
    def _recipe(self, placed: PlacedData) -> Name:
        return placed.name


class EarlierBatchShape(Shape, Makes[EarlierBatch]):
    """The batch, made before the class, of which something is taken home."""

    stands_at = "made on"

    made_on: Date = needed("made on", "2026-12-05")
    """The day on which it was made."""
    batch: Text = needed("batch", "KGB-261205")
    """The code of the batch, as it stands on its pot."""
    weighed: Weight | None = maybe("weighed", example="104 g")
    """What the lightest bar weighs on the day on which the labels are printed; labels never say more than that."""


class DateShape(Shape, Makes[ClassDate]):
    """One date of a class."""

    stands_at = "on"

    on: Date = needed("on", "2027-03-06 10:00")
    """Day and time at which it begins."""
    enrolled: People = maybe("enrolled", 0, example="9")
    """How many people have booked. Batches, sheets and shopping are for so many. A class without anybody enrolled has sheets for a full
    class."""
    staff: StaffShape | None = maybe("staff", example="{teachers: 1, assistants: 3}")
    """Who teaches on this date, where it differs from the class."""
    first_label: WholeAboveZero = maybe("first label", 1, example="3")
    """The number of the first free label on the sheet in your printer, counted from 1."""
    labels: EarlierBatchShape | None = maybe("labels", example="{made on: 2026-12-05, batch: KGB-261205, weighed: 104 g}")
    """After a demonstration of soap: the earlier batch that is taken home, so that nothing of it is written on labels by hand."""
    waiting: People = maybe("waiting", 0, example="2")
    """How many people wait for a seat. The page says so."""
    moved_from: DateOrDates = maybe("moved from", (), "2027-02-27 10:00")
    """When it was to be before: one time, or a list with the first one first. The page says so."""
    cancelled: Annotated[str | None, reads(parse_cancelled)] = maybe("cancelled", None, "yes")
    """`yes`, or the reason, which is published. Nothing is made, bought or printed for it."""
    link: WebAddress = maybe("link", "", "https://example.org/book/lotion-march")
    """Where a seat on this date is booked, if it has a page of its own."""
    revision: Whole = maybe("revision", 0, example="1")
    """How often the date has been changed since it was published. Each move and each cancellation raises it, and calendars go by it."""
    announced: DayOrDays = maybe("announced", (), "2026-11-02")
    """The day on which people were told of the date; with a revision a list, the first day first and one more for each change. Calendars
    and feeds bear the last of them. Without it they bear the day of the first publication, which the folder of the output alone knows."""

    @becomes("staff")
    def _staff(self, _: PlacedData) -> tuple[int, int] | None:
        return (self.staff.teachers, self.staff.assistants) if self.staff else None


class PictureShape(Shape, Makes[Picture]):
    """The picture of a class."""

    file: Named = needed("file", "lotion.svg")
    """The name of a picture beside class.yaml."""
    alt: Annotated[str, reads(heard)] = needed("alt", "what the picture shows")
    """What it shows, for those who cannot see it; or `decorative`, where it says nothing that the text does not."""


class ClassShape(Shape, Makes[StudioClass]):
    """One class."""

    stands_at = "title"

    title: Text = needed("title", "A lotion from scratch")
    """The title of the class."""
    format: Annotated[Format, reads(member_of(Format))] = needed("format", "hands-on")
    """How it is taught. It is worked out from the parts of the lesson, published as worked out, and compared with this."""
    summary: Text = needed("summary", "One or two sentences for the catalogue.")
    """One or two sentences for the catalogue."""
    for_whom: Text = needed("for", "adults, beginners")
    """Whom it is for, in your own words."""
    goal: Annotated[Goal, reads(member_of(Goal))] = needed("goal", "learn to make at home")
    """What people come for; advice on the format goes by it."""
    youngest: Whole = needed("youngest", "14")
    """The least age in years. Who has to watch, and which limits hold, goes by it."""
    length: Time = needed("length", "2 h")
    """How long the class takes. The parts of the lesson have to fit."""
    seats: PeopleAboveZero = needed("seats", "12")
    """The most people. The sheets without a date are for a full class."""
    price: Price = needed("price", "48.00")
    """What one seat costs, in the currency of the studio."""
    staff: StaffShape = needed("staff", "{teachers: 1, assistants: 1}")
    """The teachers and assistants of the class."""
    group_size: PeopleAboveZero = maybe("group size", 1, example="2")
    """How many students share a bench. A class in which each group makes a batch of its own has to say it."""
    makes: Annotated[dict[str, MakeShape], NOT_EMPTY] = needed("makes", "{juniper-hand-lotion: {each student: 1 container}}")
    """What is made, by the file name of the recipe."""
    wear: Texts = maybe("wear", (), "[an apron, closed shoes]")
    """What people wear, for the class page."""
    on_each_bench: Texts = maybe("on each bench", (), "[a scale, a hot plate]")
    """What stands on each bench. Without it, the tools of the recipes that students or groups make."""
    on_the_demo_table: Texts = maybe("on the demo table", (), "[a scale, a slow cooker]")
    """What stands on the teacher's table."""
    at_the_sink: Texts = maybe("at the sink", (), "[paper towels, a bin with a bag]")
    """What stands at the sink."""
    take_home: Text = maybe("take home", "", example="A bottle of 4 fl oz.")
    """What people take home, in a sentence for the class page."""
    free_from: AllergenFamilies = maybe("free from", (), "[tree nut]")
    """Families of allergens that the class promises to work without."""
    picture: PictureShape | None = maybe("picture", example="{file: lotion.svg, alt: what the picture shows}")
    """The picture of the class page and the catalogue."""
    sheets_are_public: Annotated[bool, reads(either_of("public", "studio"))] = maybe("take-home sheets", False, example="public")
    """Whether take-home sheets are on the web site, or stay in the studio to hand out."""
    labels: LabelWishesShape | None = maybe("labels", example="{sheet: letter 2 x 4, panels: 2}")
    """What this class asks of its labels in place of what studio.yaml says."""
    booking: BookingShape | None = maybe("booking", example='{link: "https://example.org/book/lotion"}')
    """How people book this class, and on what terms, where that differs from what studio.yaml says."""
    dates: tuple[DateShape, ...] = maybe("dates", (), "[{on: 2027-03-06 10:00, enrolled: 9}]")
    """The dates."""
    accepts: dict[str, Reason] = maybe("accepts", {}, "{name-of-the-finding: the reason in a sentence}")
    """Findings on this class that you accept, by name, each with its reason in a sentence."""

    @becomes("teachers")
    def _teachers(self, _: PlacedData) -> int:
        return self.staff.teachers

    @becomes("assistants")
    def _assistants(self, _: PlacedData) -> int:
        return self.staff.assistants

    @model_validator(mode="after")
    def _has_room(self) -> Self:
        most = max(self.seats, *(one.enrolled for one in self.dates), 0)
        for at, number in self._containers(most):
            if number > MOST_CONTAINERS:
                wrong = f"With {most} people these are {number} containers on one date, more than one class fills."
                raise TextError("figure-out-of-range", wrong, f"Write so many that they come to at most {MOST_CONTAINERS}.", at=at)
        return self

    def _containers(self, people: int) -> Iterator[tuple[At, int]]:
        for name, make in self.makes.items():
            filled: list[tuple[At, MakeShape | AlsoFillShape]] = [(("makes", name), make)]
            filled += [(("makes", name, "also fills", number), one) for number, one in enumerate(make.also)]
            for at, one in filled:
                yield (*at, "each student"), people * one.each_student.number
                yield (*at, "spare"), one.spare.number

    @model_validator(mode="after")
    def _says_how_many_are_in_a_group(self) -> Self:
        for name, make in self.makes.items():
            if make.batch_for is BatchFor.GROUP and "group_size" not in self.model_fields_set:
                wrong = "Each group makes a batch of its own, and nothing says how many are in one, so that each student would be a group."
                remedy = 'Write for example "group size: 2" above `makes:`, or "batch: one for each student".'
                raise TextError("field-missing", wrong, remedy, at=("makes", name, "batch"))
        return self
