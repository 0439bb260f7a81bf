"""How a class is taught, in sentences made from its parts: what you watch, what you do, what you fill and take home."""

from builder.compose.dates.time_words import FORMAT_NAMES
from builder.compose.recipe.portion_words import containers_of
from builder.compose.recipe.wording import listed, sentence, within
from builder.model.dates.studio_class import BatchFor
from builder.model.hazard import Hazard
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.lesson import Who
from builder.model.teaching.teaching import FormatAdvice
from builder.words.say import message, say

LYE = (Hazard.CAUSTIC, Hazard.DRY_LYE, Hazard.RAW_SOAP)
PAIR = 2


def how_it_is_made(studio: Studio, plan: ClassPlan) -> tuple[str, ...]:
    """Return in words who makes each product, and of all of them who handles lye and what is chosen and filled."""
    filled = [one for one in plan.made if one.taught.filled]
    return (*_who_makes_it(plan), *_lye(plan), *_chosen(plan), *_filled(studio, filled))


def your_part(plan: ClassPlan) -> tuple[str, ...]:
    """Return in words who makes what and what is chosen: for a page that says elsewhere who handles lye, and what is taken home."""
    return (*_who_makes_it(plan), *_chosen(plan))


def lye_sentence(plan: ClassPlan) -> str:
    """Return in words who handles lye; empty where there is none, or nothing proves it."""
    return " ".join(_lye(plan))


def _who_makes_it(plan: ClassPlan) -> list[str]:
    size, alike = plan.studio_class.group_size, dict[str, list[str]]()
    for one in plan.made:
        alike.setdefault(_made(one, size), []).append(say("the {product}", product=within(one.batch.recipe.name)))
    return [sentence(say(text, products=listed(names), size=size)) for text, names in alike.items()]


def taken_home(plan: ClassPlan) -> str:
    """Return in words what is taken home, in the studio's own words."""
    return say("You take home {what}", what=within(plan.studio_class.take_home)) if plan.studio_class.take_home else ""


def _made(one: MadeProduct, group_size: int) -> str:
    """Return a sentence about who makes a product, with holes for its name and for the size of a group."""
    taught = one.taught
    mine = taught.by_students or taught.together
    if mine and taught.shown:
        return message("You weigh and mix a part of {products} yourself, and watch the teacher do the rest.")
    if taught.by_students and one.make.batch_for is BatchFor.CLASS:
        return message("You make {products} with the others, in one pot for all.")
    if taught.by_students:
        return _whose(one, group_size)
    if taught.together:
        return message("You make {products} together with the teacher.")
    if taught.shown:
        return message("You watch the teacher make {products}, with every step explained.")
    if taught.ahead and not taught.chosen:
        return message("We make {products} before you come.")
    return message("We begin {products} before you come, and you finish your own.")


def _whose(one: MadeProduct, group_size: int) -> str:
    if one.make.batch_for is BatchFor.STUDENT:
        return message("You make {products} yourself, in a batch of your own.")
    if one.make.batch_for is BatchFor.GROUP and group_size > 1:
        if group_size == PAIR:
            return message("You make {products} with your own hands, in pairs.")
        return message("You make {products} with your own hands, in a group of {size}.")
    return message("You make {products} with your own hands.")


def _lye(plan: ClassPlan) -> tuple[str, ...]:
    plans = [one.batch.recipe.lye for one in plan.made if one.batch.recipe.lye]
    if not plans:
        return ()
    met = {hazard for part in plan.supervision.parts if part.by_hand for hazard in part.hazards if hazard in LYE}
    by = [one.taught.lye_by for one in plan.made if one.batch.recipe.lye]
    staff_alone = all(by) and not any(who in (Who.STUDENTS, Who.TOGETHER) for whose in by for who in whose)
    if met <= {Hazard.RAW_SOAP} and not staff_alone:
        return ()  # Nothing proves who handles it.
    if not met:
        return (say("Only the teacher handles lye and fresh soap."),)
    if met == {Hazard.RAW_SOAP}:
        return (say("Only the teacher handles lye; you work with fresh soap, in goggles and gloves."),)
    if Hazard.DRY_LYE in met:
        return (say("You work with lye, in goggles and gloves."),)
    if plan.weighing.solutions and all(lye.bought for lye in plan.weighing.solutions):
        return (say("The lye comes as a solution, and nobody handles it dry."),)
    if all(lye.ahead for lye in plan.weighing.solutions):
        return (say("The lye is mixed before you come, and nobody handles it dry."),)
    return (say("You work with lye that the teacher has mixed, in goggles and gloves."),)


def _chosen(plan: ClassPlan) -> tuple[str, ...]:
    choices = [choice for one in plan.made if one.taught.chosen for choice in one.batch.recipe.choices]
    what = listed(list(dict.fromkeys(within(choice.what) for choice in choices)))
    return (say("You choose {what} yourself.", what=what),) if what else ()


def _filled(studio: Studio, made: list[MadeProduct]) -> tuple[str, ...]:
    counts = [(one, containers_of(studio, one.batch.own.fill, one.make.each_student)) for one in made if one.make.each_student]
    if len(counts) == 1:
        return (say("You fill {containers} of your own.", containers=counts[0][1]),)
    filled = [say("{containers} of {product}", containers=many, product=within(one.batch.recipe.name)) for one, many in counts]
    return (say("You fill {containers}.", containers=listed(filled)),) if filled else ()


def advice_line(advice: FormatAdvice) -> str:
    """Return a piece of advice with where it comes from."""
    suits = listed([say(FORMAT_NAMES[one]) for one in advice.suits], "or")
    return say(
        "{what}: {because} ({formats}; {source})",
        what=sentence(say(advice.key)),
        because=say(advice.because),
        formats=suits,
        source=say(advice.source.title),
    )
