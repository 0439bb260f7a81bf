"""What names in braces mean for a batch, and which weighings they mean: asked alike by who reckons, checks and writes."""

from collections.abc import Iterable

from builder.model.recipe.column import Weighed
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Mention
from builder.rules.naming import Meaning, meaning_of, weighings


def meant_in(studio: Studio, batch: WorkedBatch, mentions: Iterable[Mention]) -> tuple[Meaning, ...]:
    """Return what some names in braces mean for a batch, in order."""
    return tuple(meaning_of(mention.name, batch.recipe, studio) for mention in mentions)


def weighed_as(studio: Studio, batch: WorkedBatch, mentions: Iterable[Mention]) -> tuple[Weighed, ...]:
    """Return the weighings that some names in braces mean one by one, in grams."""
    return tuple(w for meant in meant_in(studio, batch, mentions) for w in weighings(batch.grams, meant))
