"""How many labels there are of which finish, in words for the teacher's sheet and the check list."""

from collections import Counter
from collections.abc import Iterator

from builder.compose.edition import Edition
from builder.compose.label.label_questions import label_tasks, labels_are_held
from builder.compose.label.label_words import variant_name
from builder.compose.recipe.portion_words import container_name
from builder.compose.recipe.wording import counted, within
from builder.model.recipe.recipe import Fill
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.jar import Jar

MIXED = "Each label names one option of a choice: who mixes several writes the others, and what they add to the ingredients, on it by hand"


def label_counts(studio: Studio, made: MadeProduct) -> tuple[str, ...]:
    """Give a line for each kind of container: `Labels: 4 lavender essential oil, 3 no scent`, with how many are a guess."""
    labelled = [one for one in made.containers if one.jars]
    lines = tuple(
        f"Labels{f' for the {container_name(studio, one.filling.fill)}' if len(labelled) > 1 else ''}{_packages(one.filling.fill)}: "
        f"{_of_each(one.jars)}"
        for one in labelled
    )
    return (*lines, MIXED) if lines and any(dose.mixed for dose in made.batch.own.doses) else lines


def _packages(fill: Fill) -> str:
    return f" (one for a package of {fill.units})" if fill.units > 1 else ""


def _of_each(jars: tuple[Jar, ...]) -> str:
    counts = Counter(variant_name(jar.variant) for jar in jars)
    if len(counts) == 1 and "" in counts:
        return str(len(jars))
    said = ("; " if any("," in name for name in counts) else ", ").join(f"{count} {name}" for name, count in counts.most_common())
    left_open = sum(jar.is_open for jar in jars)
    return f"{said}. {_open_words(left_open, len(jars))}" if left_open else said


def _open_words(left_open: int, all_labels: int) -> str:
    if left_open == all_labels:
        return "No choice is known yet, so they are spread evenly over what is offered"
    stand = "1 of these stands" if left_open == 1 else f"{left_open} of these stand"
    return f"{stand} for open choices and spare containers, spread evenly over what is offered"


def label_totals(edition: Edition, plan: ClassPlan) -> Iterator[str]:
    """Give a line for each sheet of labels to print, with how many labels it has, and for what keeps others from being printed."""
    yield from label_tasks(edition, plan)
    for made in (made for made in plan.made if not labels_are_held(edition, plan, made)):
        for one in (one for one in made.containers if one.jars):
            container = "" if one.filling is made.batch.own else f", {container_name(edition.studio, one.filling.fill)}"
            yield f"Labels, {within(made.batch.recipe.name)}{container}: {len(one.jars)}"


def label_order(plan: ClassPlan) -> str:
    """Say in which order labels lie on their sheets; empty where nobody is listed."""
    if not plan.guests:
        return ""
    left = plan.students - len(plan.guests)
    others = f"then those of {counted(left, 'student', 'students')} who {'is' if left == 1 else 'are'} not listed, " if left > 0 else ""
    return f"Labels lie on their sheets in the order of this list, {others}then the spare ones."
