"""letter-not-in-font: a letter that the fonts of the printed sheets cannot show."""

from collections.abc import Iterator

from builder.model.finding import Finding, stop
from builder.model.lesson import Piece, Prose, Steps
from builder.model.place import Place
from builder.model.studio import Studio


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
    profile = studio.profile
    yield " ".join((profile.name, profile.tagline, profile.teacher, *profile.address, *profile.contact.values())), profile.place
    for recipe in studio.recipes.values():
        yield " ".join((recipe.name, recipe.about, recipe.keeps, recipe.storage, recipe.directions)), recipe.place
        yield " ".join((*recipe.tools, *recipe.label_cautions, *(phase.name.text for phase in recipe.phases))), recipe.place
    for studio_class in studio.classes.values():
        yield " ".join((studio_class.title, studio_class.for_whom, studio_class.take_home, *studio_class.wear)), studio_class.place
        for part in studio_class.lesson.parts:
            yield part.title, part.place
            for block in part.blocks:
                if isinstance(block, Prose):
                    yield _written(block.pieces), block.place
                elif isinstance(block, Steps):
                    for step in block.steps:
                        yield _written(step.pieces), step.place
    for card in {card.key: card for card in studio.ingredients.values()}.values():
        if not card.place.file.startswith("content/"):
            names = (*card.label_name.inci, *card.label_name.plain) if card.label_name else ()
            yield " ".join((card.name, *names)), card.place


def _written(pieces: tuple[Piece, ...]) -> str:
    return "".join(piece for piece in pieces if isinstance(piece, str))
