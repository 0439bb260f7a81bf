"""Whether the labels of a product fit on their sheet, as the checks look at it."""

from dataclasses import dataclass

from builder.model.place import Place
from builder.model.recipe import Recipe


@dataclass(frozen=True)
class LabelFit:
    """The labels of one product of one class on the sheet that was asked for (empty where none was), or on the first that would do.

    `fits` says whether everything stands there in type of a lawful height. `would_do` are the sheets on which it would, `on_two` those
    on which it would with the text on two labels. `least` is the least height of the text in millimetres, and `net_least` of the net
    contents, with the law. `place` is where the sheet is asked for, or the recipe.
    """

    recipe: Recipe
    class_key: str
    asked_for: str
    fits: bool
    would_do: tuple[str, ...]
    on_two: tuple[str, ...]
    least: str
    place: Place
