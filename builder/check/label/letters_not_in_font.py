"""A letter that the fonts of the printed sheets cannot show."""

from collections.abc import Callable, Iterable, Iterator, Mapping

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Profile, Studio
from builder.model.teaching.lesson import Piece, Prose, Steps


@rule_on(
    STUDIO, FindingKind("letter-not-in-font", STOP, "The fonts of the printed sheets lack a letter, which would come out as an empty box.")
)
def find_letters_not_in_font(studio: Studio) -> Iterator[Finding]:
    """Compare every text that reaches a printed sheet with the letters that all its fonts have."""
    for text, place in dict.fromkeys(_texts(studio)):
        missing = sorted({letter for letter in text if ord(letter) not in studio.letters and not letter.isspace()})
        if missing:
            named = ", ".join(f'"{letter}" (U+{ord(letter):04X})' for letter in missing)
            yield stop(
                "letter-not-in-font",
                place,
                f"The fonts of the printed sheets have no {named}; it would come out as an empty box.",
                "Write it in other letters.",
            )


def _texts(studio: Studio) -> Iterator[tuple[str, Place]]:
    yield from _of_profile(studio.profile)
    for recipe in studio.recipes.values():
        yield from _of_recipe(recipe)
    for studio_class in studio.classes.values():
        texts = {"title": [studio_class.title], "for": [studio_class.for_whom], "take home": [studio_class.take_home]}
        yield from _at_keys({**texts, "wear": studio_class.wear}, studio_class.at)
        for part in studio_class.lesson.parts:
            yield part.title, part.place
            for block in part.blocks:
                if isinstance(block, Prose):
                    yield _written(block.pieces), block.place
                elif isinstance(block, Steps):
                    for step in block.steps:
                        yield _written(step.pieces), step.place
    for roster in studio.rosters.values():
        for row in roster.rows:
            yield row.name.text, row.name.place
            yield row.allergies, row.place
    for card in {card.key: card for card in studio.ingredients.values()}.values():
        if not card.place.ships:
            yield " ".join((card.name, *card.label_names)), card.place
    for supply in studio.supplies:
        yield from ((text, supply.name.place) for text in (supply.name.text, supply.measured))


def _of_profile(profile: Profile) -> Iterator[tuple[str, Place]]:
    who = profile.responsible
    answers = (who.name, *who.address) if who else ()
    lists = {
        "address": profile.address,
        "responsible person": answers,
        "contact": profile.contact.values(),
        "emergency": profile.emergency.values(),
    }
    yield from _at_keys({"name": [profile.name], "tagline": [profile.tagline], "teacher": [profile.teacher], **lists}, profile.at)


def _of_recipe(recipe: Recipe) -> Iterator[tuple[str, Place]]:
    texts = {"name": [recipe.name], "about": [recipe.about], "keeps": [recipe.keeps, recipe.after_opening], "storage": [recipe.storage]}
    lists = {"directions": [recipe.directions], "tools": recipe.tools, "label cautions": recipe.label_cautions}
    told = [text for one in recipe.translations.values() for text in one.texts]
    yield from _at_keys({**texts, **lists, "translations": told}, recipe.at)
    yield from ((phase.name.text, phase.name.place) for phase in recipe.phases)
    yield from ((choice.what, choice.place) for choice in recipe.choices)


def _at_keys(texts: Mapping[str, Iterable[str]], at: Callable[[str], Place]) -> Iterator[tuple[str, Place]]:
    """Yield the texts under each key the place of that key."""
    yield from ((" ".join(several), at(key)) for key, several in texts.items())


def _written(pieces: tuple[Piece, ...]) -> str:
    return "".join(piece for piece in pieces if isinstance(piece, str))
