"""The cautions of a class in short: who works with what is hazardous, and what each hazard does.

Decided: a class page says every hazard in a line and shows no box. Why: whoever books asks what her part is; the box belongs before the
step, where a hand is about to move. What nobody meets in class is said of home: where nothing is heated, a warning of flames would
frighten, and contradict the rest of the page. Who works with something is said where a part of the lesson proves it.
"""

from collections.abc import Collection

from builder.compose.formula.hazards import cautions_for, hazards_of_recipe
from builder.compose.teaching.format_words import LYE, lye_sentence
from builder.compose.views.site.safety import Risk, RiskGroup
from builder.model.hazard import Hazard
from builder.model.studio import Studio
from builder.model.teaching.caution import CautionText
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import CautionHere, Where
from builder.words.say import say

# What the product does where it is used and kept, whoever made it.
_OF_THE_PRODUCT = (
    Hazard.HARMFUL_TO_PETS,
    Hazard.SLIPPERY,
    Hazard.SPOILS,
    Hazard.PHOTOTOXIC,
    Hazard.FOOD_LOOK_ALIKE,
    Hazard.CHILDREN_AND_ANIMALS,
    Hazard.OILY_CLOTHS,
)
_HOT = frozenset({Hazard.HOT, Hazard.HOT_FAT, Hazard.MICROWAVE})


def view_safety(studio: Studio, plan: ClassPlan) -> tuple[RiskGroup, ...]:
    """Return what the recipes call for and what the lesson itself places in class, the gravest first, and last what concerns the home."""
    hazards = [hazard for made in plan.made for hazard in hazards_of_recipe(studio, made.batch)]
    parts = (part for part in plan.studio_class.lesson.parts if part.where is not Where.HOME_ONLY)
    placed = {block.name.text for part in parts for block in part.blocks if isinstance(block, CautionHere)}
    hazards += [studio.cautions[name].hazard for name in placed]
    met = {hazard for part in plan.supervision.parts for hazard in part.hazards}
    texts = cautions_for(studio, [*hazards, *met])
    at_home = [text for text in texts if text.key not in placed and _is_for_home(text, {*met, *hazards})]
    nobody, home = say("Also in this class"), say("With what you take home")
    headed = [(home if text in at_home else _who(plan, text).rstrip(".") or nobody, text) for text in texts]
    groups: dict[str, list[Risk]] = {}
    for heading, text in sorted(headed, key=lambda one: (one[0] == home, one[0] == nobody)):
        groups.setdefault(heading, []).append(Risk(text.name, text.what))
    return tuple(RiskGroup(heading, tuple(risks)) for heading, risks in groups.items())


def _is_for_home(text: CautionText, brought: Collection[str]) -> bool:
    nothing_hot = not _HOT & set(brought)
    return text.hazard in _OF_THE_PRODUCT or (text.hazard == Hazard.FLAMMABLE and nothing_hot)


def _who(plan: ClassPlan, text: CautionText) -> str:
    """Return in words who works with what is hazardous; nothing of what the product does by itself where it is used and kept."""
    by_hand = [part.by_hand for part in plan.supervision.parts if text.hazard in part.hazards]
    if text.hazard == Hazard.RAW_SOAP and any(by_hand):
        return say("You work with fresh soap yourself, in goggles and gloves.")
    if text.hazard in LYE:
        return lye_sentence(plan)
    if text.hazard in _OF_THE_PRODUCT:
        return ""
    if any(by_hand):
        return say("What you work with yourself")
    return say("What the teacher works with") if by_hand else ""
