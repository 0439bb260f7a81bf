"""A choice that offers the same ingredient twice, by two of its names."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.studio import Studio


@rule_on(STUDIO_UNWORKED, FindingKind("option-twice", STOP, "A choice offers the same ingredient under two of its names."))
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
