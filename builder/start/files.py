"""What `start` and `add` write: each function gives files by their names in the studio, and nothing is written here."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import Recipe
from builder.read.text.file_names import plain_name
from builder.start.lesson_text import lesson_of
from builder.start.marks import filled, flow, scalar
from builder.start.starters import CLASS, LESSON, RECIPE, STUDIO, ScaleStart, region_start, text_of, usual_scales
from builder.start.swapped import swapped
from builder.words.listed import listed
from builder.words.spelling import american

Files = Mapping[str, str]


@dataclass(frozen=True)
class Workshop:
    """What every file of a studio goes by: whether it weighs in ounces, spells as Americans do, has to speak French on its labels,
    and writes in French itself."""

    in_ounces: bool = False
    in_american: bool = False
    in_french: bool = False
    writes_french: bool = False

    def filled(self, text: str, values: Mapping[str, str]) -> str:
        """Fill a starter in its units and its spelling; what the studio calls things stays as it is."""
        spelled = american(text) if self.in_american else text
        return filled(spelled, values, in_ounces=self.in_ounces)


@dataclass(frozen=True)
class NewStudio:
    """What a teacher has said of her studio."""

    name: str
    address: tuple[str, ...]
    email: str
    region: str
    scales: tuple[ScaleStart, ...]


def studio_file(new: NewStudio) -> Files:
    """Return `studio.yaml`."""
    usual = region_start(new.region)
    values = {
        "name": scalar(new.name),
        "address": flow(new.address),
        "email": scalar(new.email),
        "region": new.region,
        "currency": usual.currency,
        "paper": usual.paper,
        "scales": _scales(new.scales),
        "home scales": _scales(usual_scales("at home")),
        "emergency": usual.emergency,
    }
    return {STUDIO: filled(text_of(STUDIO), values, in_ounces=False)}


def _scales(scales: tuple[ScaleStart, ...]) -> str:
    return "\n".join(f"  - {{name: {scalar(one.name)}, reads to: {one.reads_to}, up to: {one.up_to}}}" for one in scales)


def recipe_file(name: str, product: str, shop: Workshop, code: str = "", begins_as: str = "") -> Files:
    """Return the file of a recipe of a kind of product; `code` are the letters of its batch codes, where they are not those of its name.

    `begins_as` is the kind whose starter serves, where it is another.
    """
    kind = begins_as or product
    text = text_of(plain_name(kind), RECIPE).replace(f"\nproduct: {kind}\n", f"\nproduct: {product}\n")
    if kind != product:
        text = f"# Begun as {kind}, which {product} is like: put your own lines in place of these.\n{text}"
    if shop.in_french:
        french = text_of(plain_name(kind), "french.yaml")
        text = swapped(text, french) if shop.writes_french else text + french
    text += (
        f"code: {code}                          # the letters of its batch codes; another recipe has those of its name\n" if code else ""
    )
    return {f"recipes/{plain_name(name)}.yaml": shop.filled(text, {"name": scalar(name)})}


def class_files(
    title: str, recipe: Recipe, begins_as: str, called: Callable[[str], str], card_of: Callable[[str], Ingredient | None], shop: Workshop
) -> Files:
    """Return the files of a class that makes a recipe; `begins_as` is the kind of product whose starter serves, `called` gives the name of
    an ingredient inside a sentence, `card_of` its card.
    """
    kind, folder = plain_name(begins_as), f"classes/{plain_name(title)}"
    alkalis = [alkali.name.text for alkali in (recipe.lye.alkalis if recipe.lye else ())]
    values = {"title": scalar(title), "recipe": recipe.key, "alkali": listed(map(called, alkalis)) if alkalis else ""}
    return {
        f"{folder}/class.yaml": shop.filled(text_of(kind, CLASS), values),
        f"{folder}/lesson.md": lesson_of(shop.filled(text_of(kind, LESSON), values | {"title": title}), recipe, called, card_of),
    }
