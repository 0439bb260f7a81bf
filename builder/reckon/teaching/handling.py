"""What people handle in each part of a class: which weighings and choices a part names, and which hazards that brings.

Decided: lye that has reached the students stays raw soap in their later parts on that recipe. Why: cleaning up is where gloves come off.

Decided: students' steps on a recipe with lye are work with raw soap unless the heading says `no raw soap`. Why: who stirs or pours names
neither lye nor soap, and silence must not open a class to children.

Decided: a part that names both the alkali and its liquid is where lye is dissolved; ahead only if no part of the class names both; what
no part names staff dissolve ahead. Why: braces are what a lesson proves; the doubtful case puts a marked bottle on the bench, never dry
lye.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.model.hazard import Hazard
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.lesson import CautionHere, Mention, Part
from builder.rules.hands.alcohol import vapour_said
from builder.rules.hands.named_amounts import meant_in
from builder.rules.hands.told import handled_mentions
from builder.rules.hazard import hazards_of, hazards_of_card
from builder.rules.lye_words import hazards_said
from builder.rules.naming import CONTAINERS, CUP, PORTION, options_of, weighings
from builder.rules.part_recipe import recipe_in_hand

FILLS = (PORTION, CUP, CONTAINERS)


@dataclass(frozen=True)
class Handled:
    """What one part names: weighings of its batch, ingredients to choose from, whether it fills containers; and work with raw soap."""

    weighed: tuple[Weighed, ...]
    chosen: tuple[Ingredient, ...]
    fills: bool
    raw_soap: bool = False

    @property
    def mixes(self) -> bool:
        """Tell whether the batch itself is worked on in it."""
        return bool(self.weighed) or self.raw_soap

    @property
    def makes(self) -> bool:
        """Tell whether something is made in it, and not only filled or talked about."""
        return self.mixes or bool(self.chosen)


def batch_of(made: tuple[MadeProduct, ...], part: Part) -> WorkedBatch:
    """Return the batch that people are taken to work on in a part."""
    batches = {one.make.recipe.text: one.batch for one in made}
    return batches[recipe_in_hand(part, tuple(batches), {key for key, batch in batches.items() if batch.recipe.lye})]


@remembered(256)
def handled_in(studio: Studio, part: Part, batch: WorkedBatch) -> Handled:
    """Look up every name in braces of a part that is no amount that is only told."""
    meant = meant_in(studio, batch, handled_in_blocks(part))
    named = [w for one in meant for w in weighings(batch.grams, one)]
    weighed = tuple(w for w in batch.grams.weighed if any(w is one for one in named))
    chosen = tuple(card for one in meant for card in options_of(batch.recipe, one, studio))
    raw_soap = works_on_raw_soap(part, batch) or (part.by_hand and Hazard.RAW_SOAP in hazards_said(part, studio.lye_words))
    return Handled(weighed, chosen, any(one in FILLS for one in meant), raw_soap)


def has_steps(part: Part) -> bool:
    """Tell whether something is done in a part, and not only said."""
    return bool(part.steps)


def handled_in_blocks(part: Part) -> tuple[Mention, ...]:
    """Return every name in braces of a part, without what its steps only tell of the beginning, in order."""
    in_hand = ((step, handled_mentions(step)) for step in part.steps)
    told = {id(one) for step, handled in in_hand for one in step.mentions if one not in handled}
    return tuple(one for one in part.mentions if id(one) not in told)


def in_steps(part: Part) -> tuple[Mention, ...]:
    """Return every name in braces that the steps of a part hold, in order."""
    return tuple(mention for step in part.steps for mention in step.mentions)


def works_on_raw_soap(part: Part, batch: WorkedBatch) -> bool:
    """Tell whether students' steps on a recipe with lye are taken for work with raw soap: always, unless the heading denies it.

    What the steps themselves say of raw soap counts before the heading (`handled_in`).
    """
    return part.by_hand and has_steps(part) and batch.recipe.lye is not None and not part.no_raw_soap


def lye_said(studio: Studio, part: Part, batch: WorkedBatch) -> list[str]:
    """Return what the words of a part say of lye in somebody's hands.

    Ready-mixed lye is never dry, and where braces name lye they tell whether it is (`with_dry_lye`).
    """
    said = hazards_said(part, studio.lye_words)
    ready = batch.recipe.lye is not None and batch.recipe.lye.ready_mixed is not None
    dry = Hazard.DRY_LYE in said and not ready and not _names_lye(studio, part, batch)
    return [*([Hazard.CAUSTIC] if Hazard.CAUSTIC in said or Hazard.DRY_LYE in said else []), *([Hazard.DRY_LYE] if dry else [])]


def handles_lye(studio: Studio, part: Part, batch: WorkedBatch) -> bool:
    """Tell whether somebody has lye in the hands in a part: by an amount that it names, or by its words."""
    return _names_lye(studio, part, batch) or bool(lye_said(studio, part, batch))


def _names_lye(studio: Studio, part: Part, batch: WorkedBatch) -> bool:
    return any(w.line.role is Role.ALKALI for w in handled_in(studio, part, batch).weighed)


def hazards_in(studio: Studio, part: Part, batch: WorkedBatch, with_dry_lye: Sequence[Part] = ()) -> tuple[str, ...]:
    """Return the hazards of what a part names, of the heat of its phases, of cautions that it places, and of lye and alcohol in its words.

    `with_dry_lye` are the parts of the lesson in which somebody has solid alkali before them.
    """
    handled = handled_in(studio, part, batch)
    placed = (studio.cautions.get(block.name.text) for block in part.blocks if isinstance(block, CautionHere))
    found = [caution.hazard for caution in placed if caution]
    for w in handled.weighed:
        found += hazards_of(studio, w.line.ingredient, w.line.phase, batch)
    found += [Hazard.CAUSTIC, Hazard.DRY_LYE] if any(part is one for one in with_dry_lye) else []
    found += (*lye_said(studio, part, batch), *vapour_said(part.sentences, studio.flame_words))
    found += [hazard for card in handled.chosen for hazard in hazards_of_card(card, batch)]
    return tuple(dict.fromkeys(found))
