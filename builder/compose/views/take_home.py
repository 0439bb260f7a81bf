"""What `parts/take-home.html` shows, on the screen and on paper."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame
from builder.compose.views.ingredient_table import IngredientTable
from builder.compose.views.lesson import LessonFlow
from builder.compose.views.lye import LyeView


@dataclass(frozen=True)
class ScaleSet:
    """The scales that one column needs: `grams` or `ounces`, and each scale in words."""

    column: str
    scales: tuple[str, ...]


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
class TakeHomeView:
    """A take-home sheet. `pdf` is the address of the same sheet as PDF, empty on paper; `first_aid` is for lye, empty without it.

    `label_open` says what is in it where no list can be printed yet. `cost` is what the batch costs, empty unless the studio asks for it.
    `mark_html` is the drawing of the recipe.
    """

    frame: Frame
    pdf: str
    class_title: str
    recipe: str
    identity: str
    size: str
    about: str
    fills: str
    scales: tuple[ScaleSet, ...]
    tools: tuple[str, ...]
    table: IngredientTable
    choices: tuple[ChoiceView, ...]
    lye: LyeView | None
    heat: tuple[str, ...]
    flow: LessonFlow
    time: str
    storage: str
    keeps: str
    ph: str
    cost: str
    directions: str
    label_lists: tuple[ListedVariant, ...]
    label_open: str
    label_rest: bool
    label_note: str
    label_allergens: str
    label_cautions: tuple[str, ...]
    net_contents: str
    allergens: str
    allergens_open: str
    free_from: str
    first_aid: tuple[str, ...]
    emergency: tuple[str, ...]
    printed: str
    mark_html: str
