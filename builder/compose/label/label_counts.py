"""How many labels there are of which finish, in words for the teacher's sheet and the check list."""

from collections import Counter
from collections.abc import Iterator

from builder.compose.edition import Edition
from builder.compose.label.label_questions import label_tasks, labels_are_held
from builder.compose.label.label_words import variant_name
from builder.compose.recipe.portion_words import container_name
from builder.compose.recipe.wording import counted, within
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, Finish, MadeProduct

MIXED = "Each label names one option of a choice: who mixes several writes the others, and what they add to the ingredients, on it by hand"


def label_counts(studio: Studio, made: MadeProduct) -> tuple[str, ...]:
    """Give a line for each kind of container: `Labels: 4 lavender essential oil, 3 no scent`, with how many are a guess."""
    several = sum(bool(finishes) for finishes in made.finishes) > 1
    lines = tuple(
        f"Labels{f' for the {container_name(studio, filled)}' if several else ''}{_packages(filled)}: {_of_each(finishes)}"
        for (filled, _), finishes in zip(made.fillings, made.finishes, strict=True)
        if finishes
    )
    return (*lines, MIXED) if lines and any(dose.mixed for dose in made.batch.doses) else lines


def _packages(filled: WorkedBatch) -> str:
    units = filled.recipe.fill.units
    return f" (one for a package of {units})" if units > 1 else ""


def _of_each(finishes: tuple[Finish, ...]) -> str:
    counts = Counter(variant_name(finish.variant) for finish in finishes)
    if len(counts) == 1 and "" in counts:
        return str(len(finishes))
    said = ("; " if any("," in name for name in counts) else ", ").join(f"{count} {name}" for name, count in counts.most_common())
    left_open = sum(finish.is_open for finish in finishes)
    return f"{said}. {_open_words(left_open, len(finishes))}" if left_open else said


def _open_words(left_open: int, all_labels: int) -> str:
    if left_open == all_labels:
        return "No choice is known yet, so they are spread evenly over what is offered"
    stand = "1 of these stands" if left_open == 1 else f"{left_open} of these stand"
    return f"{stand} for open choices and spare containers, spread evenly over what is offered"


def label_totals(edition: Edition, plan: ClassPlan) -> Iterator[str]:
    """Give a line for each sheet of labels to print, with how many labels it has, and for what keeps others from being printed."""
    yield from label_tasks(edition, plan)
    for made in (made for made in plan.made if not labels_are_held(edition, plan, made)):
        for number, ((filled, _), finishes) in enumerate(zip(made.fillings, made.finishes, strict=True)):
            container = f", {container_name(edition.studio, filled)}" if number else ""
            if finishes:
                yield f"Labels, {within(filled.recipe.name)}{container}: {len(finishes)}"


def label_order(plan: ClassPlan) -> str:
    """Say in which order labels lie on their sheets; empty where nobody is listed."""
    if not plan.guests:
        return ""
    left = plan.students - len(plan.guests)
    others = f"then those of {counted(left, 'student', 'students')} who {'is' if left == 1 else 'are'} not listed, " if left > 0 else ""
    return f"Labels lie on their sheets in the order of this list, {others}then the spare ones."
