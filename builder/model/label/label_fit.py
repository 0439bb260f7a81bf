"""Whether the labels of a product fit on their sheet, as the checks look at it."""

from dataclasses import dataclass

from builder.model.place import Place


@dataclass(frozen=True)
class OverContainer:
    """Labels that do not sit on their container: the size of one, how many there are of them, and the places of the container, in words.

    `would_do` are the sheets whose labels hold the text and sit, `tags` the sheets of tags that hold it, `on_two` the
    sheets of labels or tags that do so with the text on two, where it is asked for on one.
    """

    container: str
    sheet: str
    label: str
    labels: int
    places: str
    would_do: tuple[str, ...]
    tags: tuple[str, ...]
    on_two: tuple[str, ...] = ()


@dataclass(frozen=True)
class Start:
    """The label with which the first sheet of a date begins, counted from 1, where that is said, and the sheet with its labels."""

    number: int
    sheet: str
    positions: int
    place: Place


@dataclass(frozen=True)
class LabelFit:
    """The labels of one product of one class on the sheet that was asked for (empty where none was), or on the first that would do.

    `name` is the product's, `recipe` the key of its recipe. `fits` says whether everything stands there in type of a lawful height.
    `would_do` are the sheets on which it would, `on_two` those on which it would with the text on two labels. `least` says the least
    heights of type. `place` is where the sheet is asked for, or the recipe. `over` is None where the labels sit on their container, or
    where it has not been measured. `with_little_room` says what the region lets stand elsewhere, and where that is written. `starts` says
    where the first sheet of a date begins; None for the sheets after it, and where nothing fits. `is_composed` says whether
    fronts have a design, `on` which sheet the labels lie on, `has_fields` whether
    every front that is to be coloured in has something to colour in.
    """

    name: str
    recipe: str
    class_key: str
    asked_for: str
    fits: bool
    would_do: tuple[str, ...]
    on_two: tuple[str, ...]
    least: str
    place: Place
    over: OverContainer | None = None
    with_little_room: str = ""
    starts: Start | None = None
    is_composed: bool = True
    has_fields: bool = True
    on: str = ""
