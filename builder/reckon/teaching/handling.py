"""What people handle in each part of a class: which weighings and choices a part names, and which hazards that brings."""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.model.place import Name
from builder.model.recipe.column import Role, Weighed
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.lesson import CautionHere, Part, Steps
from builder.rules.hazard import CAUSTIC, DRY_LYE, RAW_SOAP, hazards_of, hazards_of_card
from builder.rules.lye_words import hazards_said
from builder.rules.named_weighings import STROKES, weighings_named
from builder.words.fold import fold

PORTION_WORDS = ("portion", "cup", "containers")


@dataclass(frozen=True)
class Handled:
    """What one part names: weighings of its batch, ingredients to choose from, whether it fills containers; and work with raw soap."""

    weighed: tuple[Weighed, ...]
    chosen: tuple[Ingredient, ...]
    fills: bool
    raw_soap: bool = False

    @property
    def mixes(self) -> bool:
        """Say whether the batch itself is worked on in it."""
        return bool(self.weighed) or self.raw_soap

    @property
    def makes(self) -> bool:
        """Say whether something is made in it, and not only filled or talked about."""
        return self.mixes or bool(self.chosen)


def batch_of(made: tuple[MadeProduct, ...], part: Part) -> WorkedBatch:
    """Give the batch that a part is about: that of the recipe it names, or the first of the class.

    Work of the students' hands that names neither recipe nor amount is taken for the one with lye, if there is one: the safe side.
    """
    if part.by_hand and part.recipe is None and not part.mentions:
        return next((one.batch for one in made if one.batch.recipe.lye), made[0].batch)
    return next((one.batch for one in made if part.recipe and one.make.recipe.text == part.recipe.text), made[0].batch)


@remembered(256)
def handled_in(studio: Studio, part: Part, batch: WorkedBatch) -> Handled:
    """Look up every name in braces of a part."""
    names = [mention.name for mention in part.mentions]
    named = [w for name in names for w in weighed_as(studio, batch, name)]
    weighed = tuple(w for w in batch.grams.weighed if any(w is one for one in named))
    chosen = tuple(card for name in names if not weighed_as(studio, batch, name) for card in _options(studio, batch, name))
    raw_soap = works_on_raw_soap(part, batch) or (part.by_hand and RAW_SOAP in hazards_said(part, studio.lye_words))
    return Handled(weighed, chosen, any(name.key in PORTION_WORDS for name in names), raw_soap)


def has_steps(part: Part) -> bool:
    """Say whether something is done in a part, and not only said."""
    return any(isinstance(block, Steps) for block in part.blocks)


def names_in_steps(part: Part) -> tuple[Name, ...]:
    """Give every name in braces that the steps of a part hold, in order."""
    return tuple(mention.name for block in part.blocks if isinstance(block, Steps) for step in block.steps for mention in step.mentions)


def works_on_raw_soap(part: Part, batch: WorkedBatch) -> bool:
    """Say whether students' steps on a recipe with lye are taken for work with raw soap: always, unless the heading says that they are not.

    What the steps themselves say of raw soap counts before the heading (`handled_in`).
    """
    return part.by_hand and has_steps(part) and batch.recipe.lye is not None and not part.no_raw_soap


def weighed_as(studio: Studio, batch: WorkedBatch, name: Name) -> tuple[Weighed, ...]:
    """Give the weighings that a name means; none for the batch as a whole, for portions and for what is chosen."""
    meant = Name(name.key.removesuffix(STROKES), name.place)
    return weighings_named(studio, batch.grams, meant)


def _options(studio: Studio, batch: WorkedBatch, name: Name) -> list[Ingredient]:
    card = studio.ingredient(name)
    for choice in batch.recipe.choices:
        options = [studio.ingredient(option) for option in choice.options if option is not None]
        if fold(choice.what) == name.key or (card and card in options):
            return [option for option in options if option]
    return []


def lye_said(studio: Studio, part: Part, batch: WorkedBatch) -> list[str]:
    """Give what the words of a part say of lye in somebody's hands.

    Ready-mixed lye is never dry, and where braces name lye they tell whether it is (`with_dry_lye`).
    """
    said = hazards_said(part, studio.lye_words)
    ready = batch.recipe.lye is not None and batch.recipe.lye.ready_mixed is not None
    dry = DRY_LYE in said and not ready and not _names_lye(studio, part, batch)
    return [*([CAUSTIC] if CAUSTIC in said or DRY_LYE in said else []), *([DRY_LYE] if dry else [])]


def handles_lye(studio: Studio, part: Part, batch: WorkedBatch) -> bool:
    """Say whether somebody has lye in the hands in a part: by an amount that it names, or by its words."""
    return _names_lye(studio, part, batch) or bool(lye_said(studio, part, batch))


def _names_lye(studio: Studio, part: Part, batch: WorkedBatch) -> bool:
    return any(w.line.role is Role.ALKALI for w in handled_in(studio, part, batch).weighed)


def hazards_in(studio: Studio, part: Part, batch: WorkedBatch, with_dry_lye: Sequence[Part] = ()) -> tuple[str, ...]:
    """Give the hazards of what a part names, of the heat of its phases, of the cautions that it places, and of lye that its words speak of.

    `with_dry_lye` are the parts of the lesson in which somebody has solid alkali before them.
    """
    handled = handled_in(studio, part, batch)
    placed = (studio.cautions.get(block.name.text) for block in part.blocks if isinstance(block, CautionHere))
    found = [caution.hazard for caution in placed if caution]
    for w in handled.weighed:
        found += hazards_of(studio, w.line.ingredient, w.line.phase, batch)
    found += [CAUSTIC, DRY_LYE] if any(part is one for one in with_dry_lye) else []
    found += lye_said(studio, part, batch)
    found += [hazard for card in handled.chosen for hazard in hazards_of_card(card, batch)]
    return tuple(dict.fromkeys(found))
