"""Labels that are held back, in words for the teacher's sheet and the check list: that there are none, why, and what to ask for."""

from builder.compose.edition import Edition
from builder.compose.recipe.wording import within
from builder.model.finding import Finding, Weight
from builder.model.subject import Labels
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.words.say import message, say

WHERE = message("What the checks found")


def labels_are_held(edition: Edition, plan: ClassPlan, made: MadeProduct) -> bool:
    """Tell whether a product of a class gets no labels."""
    return edition.held.holds(Labels(made.make.recipe.text, plan.studio_class.key))


def label_questions(edition: Edition, plan: ClassPlan, made: MadeProduct) -> tuple[Finding, ...]:
    """Return the stops that hold back the labels of a product, also those that were accepted."""
    recipe, key = made.make.recipe.text, plan.studio_class.key
    about = {Labels(recipe), Labels(recipe, key)}
    return tuple(finding for finding in edition.findings if finding.weight is Weight.STOP and finding.about & about)


def no_labels(edition: Edition, plan: ClassPlan, made: MadeProduct) -> tuple[str, ...]:
    """Return for the teacher's sheet that a product gets no labels, and where it says why; nothing where it gets them."""
    if not labels_are_held(edition, plan, made):
        return ()
    return (say('No labels are printed for this product, and what is packed goes home without one: see "{where}"', where=say(WHERE)),)


def label_tasks(edition: Edition, plan: ClassPlan) -> tuple[str, ...]:
    """Return a line for each thing to ask for or to do before labels can be printed, and for each reason to do without."""
    lines = []
    for made in plan.made:
        name = within(made.batch.recipe.name)
        for finding in label_questions(edition, plan, made):
            if finding.accepted is not None:
                lines.append(say("Labels, {product}: none, as accepted: {reason}", product=name, reason=finding.accepted))
            else:
                lines.append(say("Labels, {product}: none yet. {remedy}", product=name, remedy=finding.remedy))
    return tuple(dict.fromkeys(lines))
