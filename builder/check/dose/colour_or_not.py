"""A colour that may be there for something else in what stays on the skin; a `not for colour` that is not used."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.places import place_of_line
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import DeclaredAs
from builder.model.recipe.product import Contact


@rule_on(
    BATCH,
    FindingKind(
        "colour-or-not",
        CAUTION,
        "It is not clear whether something colours the product or does something else there, and the label declares it by that.",
    ),
)
def find_colours_or_not(batch: Batch) -> Iterator[BatchFinding]:
    """Look at what a recipe holds, and at what it says of it. What students choose as a colour is one."""
    recipe = batch.worked.recipe
    used = {line.ingredient.key for line in batch.worked.lines}
    for name in recipe.not_for_colour:
        card = batch.cards.get(name.key)
        if card is None or card.key not in used:
            wrong = f'"{name.text}" stands under `not for colour:`, and the recipe holds nothing of that name.'
            yield batch.caution("colour-or-not", name.place, wrong, "Write the name as it stands among the ingredients, or remove it.", "")
    for weighed in batch.worked.grams.weighed:
        card = weighed.line.ingredient
        stays = batch.worked.product.contact == Contact.LEAVE_ON
        if card.also_works_as and card.declared_as is DeclaredAs.COLOUR and stays and weighed.mass:
            yield batch.caution(
                "colour-or-not",
                place_of_line(weighed.line, recipe),
                f"{card.name} is declared as a colour, which stands last under its colour name, and here it may be {card.also_works_as}. "
                "It is declared by what it is there for.",
                f"Write `not for colour: [{card.name.lower()}]` if it is there for that; or accept this with the reason if it is there for "
                "its colour.",
                "",
            )
