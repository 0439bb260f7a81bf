"""The hazards that rules and words know by name, and what a card and the heat of a phase bring of them.

A phase that is heated brings `hot`, or `hot fat` where fat or wax is melted in it. From which temperature that holds is a constant of
the library, with its source; without it every heated phase counts as hot.

Decided: undiluted surfactants and strong alkalis harm eyes: goggles, and below 12 years handed over weighed. Why: a fleck of powder is
enough, and they look like salt.

Decided: milk, honey and oats in a bar made with lye bring no word on spoiling. Why: nothing grows in the lye of soap, a bar dries and wants
no preservative, and who reads "preserve whatever holds water" beside it looks for one (common practice, no source).

Decided: only what stands before the first part that speaks of heat in any way counts as cold, and what is only said heats nothing. Once
something has been warm, or where no part says so, the caution stays with every amount of what is heated: too often is the safe side.

Decided: what was left hot is one caution: hot fat before hot water, and no fat once it has become soap. Why: two boxes on one burn hide it.
"""

import re
from collections.abc import Collection, Sequence

from builder.model.hazard import Hazard
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.product import DeclaredBy
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import is_order
from builder.rules.hands.done import is_done

HEAT = (Hazard.HOT_FAT, Hazard.HOT)
BURNS_FROM = "hot enough to burn"
_OF_HEAT = re.compile(
    r"\b(?:warm|heat|hot|melt|boil|simmer|scald|cook|steam|stove|burner|microwave|oven|bain|double boiler|water bath|flame|mitts?)\w*|°",
    re.IGNORECASE,
)
_OF_FAT = re.compile(r"\b(?:oil|fat|butter|wax|tallow|lard|melt)\w*", re.IGNORECASE)
# Words of heat that heat nothing that is made: what is washed, put out or left cold, and what a vessel can bear.
_NO_HEAT = re.compile(
    r"\bheat-?\W?(?:proof|resistant)\b|\bfrom (?:the )?heat\b"
    r"|\b(?:wash|rinse|clean|scrub)\w*\b[^.;:]*?\b(?:hot|warm)(?: soapy| running| tap)? water\b"
    r"|\bput out (?:every|all|any) flames?(?: and (?:every )?hot ?plates?)?\b",
    re.IGNORECASE,
)


def hazards_of(studio: Studio, card: Ingredient, phase: str, batch: WorkedBatch) -> tuple[str, ...]:
    """Return the hazards of an ingredient in the phase in which it stands."""
    return (*hazards_of_card(card, batch), *heat_of(studio, phase, batch))


def hazards_of_card(card: Ingredient, batch: WorkedBatch) -> tuple[str, ...]:
    """Return the hazards of a card that hold in this product: oil makes a tub slippery only from what stays oil and is used in one."""
    made_with_lye = batch.product.made_with_lye
    in_a_tub = not (batch.product.contact.stays_on or made_with_lye)
    in_a_bar = made_with_lye and batch.product.declared_by is DeclaredBy.WEIGHT
    gone = {hazard for hazard, is_gone in ((Hazard.SLIPPERY, not in_a_tub), (Hazard.SPOILS, in_a_bar)) if is_gone}
    return tuple(hazard for hazard in card.hazards if hazard not in gone)


def heat_of(studio: Studio, phase_name: str, batch: WorkedBatch) -> tuple[str, ...]:
    """Return the hazard that the heat of a phase brings, if it is heated far enough to burn."""
    phase = next((phase for phase in batch.recipe.phases if phase.name.text == phase_name), None)
    burns_from = studio.constants.get(BURNS_FROM)
    if phase is None or phase.heat_to is None or (burns_from and phase.heat_to.celsius < burns_from.low):
        return ()
    fat = any(line.ingredient.counts_as.is_oil for line in batch.lines if line.phase == phase_name)
    return (Hazard.HOT_FAT if fat else Hazard.HOT,)


def heat_left(hot: Collection[str], *, is_soap: bool) -> tuple[Hazard, ...]:
    """Return the one hazard of heat that is said of what an earlier part has left hot; none where nothing is."""
    if not any(hazard in HEAT for hazard in hot):
        return ()
    return (Hazard.HOT if is_soap or Hazard.HOT_FAT not in hot else Hazard.HOT_FAT,)


def is_of_heat(sentence: Sentence) -> bool:
    """Tell whether a sentence speaks of heat that something is brought to: not of water to wash in, nor of flames that are put out."""
    return _OF_HEAT.search(_NO_HEAT.sub(" ", sentence.words)) is not None


def speaks_of_heat(part: Part) -> bool:
    """Tell whether any sentence of a part, or its heading, speaks of heat."""
    return any(map(is_of_heat, part.sentences))


def cold_parts(parts: Sequence[Part]) -> tuple[Part, ...]:
    """Return the parts that come before the first in which hands work and heat is spoken of; none where there is no such part."""
    first = next((place for place, part in enumerate(parts) if heats(part)), 0)
    return tuple(parts[:first])


def heats(part: Part) -> bool:
    """Tell whether heat comes in with a part that is done: without steps, only what it orders does that, and not what it explains."""
    return is_done(part) and (speaks_of_heat(part) if part.steps else any(is_order(one) and is_of_heat(one) for one in part.sentences))


def heats_fat(part: Part) -> bool:
    """Tell whether a sentence of a part speaks of heat and of fat in one breath."""
    return any(is_of_heat(sentence) and _OF_FAT.search(sentence.words) is not None for sentence in part.sentences)
