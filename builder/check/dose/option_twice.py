"""option-twice: a choice that offers the same ingredient twice, by two of its names."""

from collections.abc import Iterator

from builder.model.finding import Finding, stop
from builder.model.place import Name
from builder.model.studio import Studio


def find_options_twice(studio: Studio) -> Iterator[Finding]:
    """Compare each option with those before it."""
    for recipe in studio.recipes.values():
        for choice in recipe.choices:
            seen: dict[str, Name] = {}
            for option in choice.options:
                card = studio.ingredient(option) if option else None
                if option and card and seen.setdefault(card.key, option) is not option:
                    yield stop(
                        "option-twice",
                        option.place,
                        f'"{option}" is {card.name}, which this choice offers already as "{seen[card.key]}". Labels and amounts to '
                        "have ready would count it twice.",
                        "Keep one of the two names.",
                    )
