"""How a class is taught, in sentences made from its parts: what you watch, what you do, what you fill and take home."""

from builder.compose.portion_words import container_name, containers_of
from builder.compose.wording import listed, sentence, within
from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet, MadeSheet
from builder.model.recipe import Choice
from builder.model.studio import Studio
from builder.model.studio_class import BatchFor
from builder.model.teaching import FormatAdvice, Taught

LYE = ("caustic", "dry lye", "raw soap")
PAIR = 2


def how_it_is_made(studio: Studio, sheet: ClassSheet) -> tuple[str, ...]:
    """Say of each product who makes it, and of all of them who handles lye and what is chosen and filled."""
    pairs = list(zip(sheet.made, sheet.teaching.taught, strict=True))
    made = [sentence(_made(one, taught, sheet.studio_class.group_size)) for one, taught in pairs]
    chosen = [choice for one, taught in pairs if taught.chosen for choice in one.batch.recipe.choices]
    filled = [one for one, taught in pairs if taught.filled]
    return (*made, *_lye(sheet), *_chosen(chosen), *_filled(studio, filled))


def taken_home(sheet: ClassSheet) -> str:
    """Say what is taken home, in the studio's own words."""
    return f"You take home {within(sheet.studio_class.take_home)}" if sheet.studio_class.take_home else ""


def _made(one: MadeSheet, taught: Taught, group_size: int) -> str:
    name = f"the {within(one.batch.recipe.name)}"
    mine = taught.by_students or taught.together
    if mine and taught.shown:
        return f"you weigh and mix a part of {name} yourself, and watch the teacher do the rest."
    if taught.by_students:
        return f"you make {name} with your own hands{_whose(one, group_size)}."
    if taught.together:
        return f"you make {name} together with the teacher."
    if taught.shown:
        return f"you watch the teacher make {name}, with every step explained."
    return f"{name} is made ready before you come." if taught.ahead else f"you finish {name} yourself."


def _whose(one: MadeSheet, group_size: int) -> str:
    if one.make.batch_for is BatchFor.STUDENT:
        return ", a batch of your own"
    if one.make.batch_for is BatchFor.GROUP and group_size > 1:
        return ", in pairs" if group_size == PAIR else f", in a group of {group_size}"
    return ""


def _lye(sheet: ClassSheet) -> tuple[str, ...]:
    plans = [one.batch.recipe.lye for one in sheet.made if one.batch.recipe.lye]
    if not plans:
        return ()
    if not any(hazard in LYE for part in sheet.supervision.parts if part.by_hand for hazard in part.hazards):
        return ("Only the teacher handles lye and fresh soap.",)
    ready = all(plan.ready_mixed for plan in plans)
    return ("The lye is mixed before you come, and nobody handles it dry.",) if ready else ("You work with lye, in goggles and gloves.",)


def _chosen(choices: list[Choice]) -> tuple[str, ...]:
    what = listed(list(dict.fromkeys(within(choice.what) for choice in choices)))
    return (f"You choose the {what} of your own.",) if what else ()


def _filled(studio: Studio, made: list[MadeSheet]) -> tuple[str, ...]:
    counts = [(one.batch, one.make.each_student) for one in made if one.make.each_student]
    return (f"You fill {listed([_own(studio, batch, count) for batch, count in counts])}.",) if counts else ()


def _own(studio: Studio, batch: BatchSheet, count: int) -> str:
    return f"{containers_of(count, container_name(studio, batch))} of {within(batch.recipe.name)}"


def advice_line(advice: FormatAdvice) -> str:
    """Give a piece of advice with where it comes from."""
    return f"{sentence(advice.key)}: {advice.because} ({listed([str(one) for one in advice.suits], 'or')}; {advice.source.title})"
