"""What `parts/take-home.html` shows, on the screen and on paper."""

from dataclasses import dataclass

from builder.compose.views.caution import Call, CautionView
from builder.compose.views.frame import Frame, Link
from builder.compose.views.lesson import FlowPart, LessonFlow, Under
from builder.compose.views.lye import LyeView


@dataclass(frozen=True)
class ScaleSet:
    """A scale by its name, and how it reads in each column."""

    scale: str
    reads: tuple[str, ...]


@dataclass(frozen=True)
class ChoiceView:
    """What may be added to one portion: what, from which options, and the most of it in words."""

    what: str
    options: str
    at_most: str


@dataclass(frozen=True)
class ListedVariant:
    """One ingredient list, and for which choice it holds (empty where there is none)."""

    choice: str
    text: str


@dataclass(frozen=True)
class FirstAid:
    """What to do after an accident with lye, a field for each way in which it harms: `On skin`, and what to do."""

    where: str
    what: str


@dataclass(frozen=True)
class RecordView:
    """What the maker writes down: fields in rows, each with what helps to fill it in; weeks of the cure, empty without one."""

    fields: tuple[tuple[str, str], ...]
    weeks: tuple[str, ...]


@dataclass(frozen=True)
class HomeWeighing:
    """One weighing: what, on which scale, and its amount in each column."""

    name: str
    scale: str
    cells: tuple[str, ...]


@dataclass(frozen=True)
class HomeGroup:
    """What is poured together: a heading, its weighings, their sum before they are poured together, and what follows below.

    `apart` says that each is weighed by itself, where a scale does not hold all of them at once.
    """

    title: str
    treatment: str
    rows: tuple[HomeWeighing, ...]
    together: tuple[str, ...]
    note: str = ""
    apart: str = ""


@dataclass(frozen=True)
class HomeTable:
    """All weighings in the order of use, and what the whole batch comes to."""

    columns: tuple[str, ...]
    groups: tuple[HomeGroup, ...]
    total: tuple[str, ...]


@dataclass(frozen=True)
class ToolView:
    """A tool to set out, and its small drawing; no drawing where none fits."""

    words: str
    drawing_html: str


@dataclass(frozen=True)
class TakeHomeView:
    """A take-home sheet. `pdf` and `large` are the addresses of the same sheet as PDF and in large print, empty on paper.

    `class_page` leads from a page of the site to its class. `danger` is the gravest caution of all. `first_aid` and `bench_html`, the
    bench from above, are for lye, empty without it; `at_foot` stands beside the numbers to call. `label_open` says what is in it where no
    list can be printed yet; `label_rest` is the word of the region for scents where people add theirs to the list by hand, empty
    elsewhere. `cost` is what the batch costs, empty unless the studio asks for it. `letters_of_others` say which parts of the class are
    not on it. `parts` are those of the flow, those under the same cautions together; `runs_on` says whether one may run on over a page
    where that saves one. `times` say how long it takes and when soap is ready. `weighs_water` says whether water is among what is weighed.
    `mark_html` is the drawing of the recipe.
    """

    frame: Frame
    pdf: str
    large: str
    class_page: Link | None
    class_title: str
    recipe: str
    identity: str
    size: str
    about: str
    fills: str
    scales: tuple[ScaleSet, ...]
    tools: tuple[ToolView, ...]
    table: HomeTable
    weighs_water: bool
    choices: tuple[ChoiceView, ...]
    lye: LyeView | None
    purities: tuple[str, ...]
    heat: tuple[str, ...]
    flow: LessonFlow
    letters_of_others: tuple[str, ...]
    parts: tuple[FlowPart | Under, ...]
    runs_on: bool
    times: tuple[str, ...]
    danger: CautionView | None
    storage: str
    keeps: str
    ph: str
    cost: str
    directions: str
    label_lists: tuple[ListedVariant, ...]
    label_open: str
    label_rest: str
    label_note: str
    label_allergens: str
    label_cautions: tuple[str, ...]
    net_contents: str
    allergens: str
    allergens_open: str
    free_from: str
    first_aid: tuple[FirstAid, ...]
    bench_html: str
    calls: tuple[Call, ...]
    at_foot: str
    record: RecordView
    printed: str
    mark_html: str
