"""How many labels there are of which finish, in words for the teacher's sheet and the check list."""

from collections import Counter
from collections.abc import Iterator

from builder.compose.document_kind import ToPrint
from builder.compose.edition import Edition
from builder.compose.label.label_questions import label_tasks, labels_are_held
from builder.compose.label.label_words import variant_name
from builder.compose.label_layout.label_plans import text_of
from builder.compose.label_layout.label_sheets import wished
from builder.compose.punctuation import labelled
from builder.compose.recipe.portion_words import container_name
from builder.compose.recipe.wording import within
from builder.model.recipe.recipe import Fill
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.jar import Jar
from builder.words.listed import listed
from builder.words.say import message, say, say_count

MIXED = message(
    "Each label names one option of a choice: who mixes several writes the others, and what they add to the ingredients, on it by hand"
)


def label_counts(studio: Studio, made: MadeProduct) -> tuple[str, ...]:
    """Return a line for each kind of container: `Labels: 4 lavender essential oil, 3 no scent`, with how many are a guess."""
    with_jars = [one for one in made.containers if one.jars]
    lines = tuple(labelled(_labels(studio, one.filling.fill, len(with_jars) > 1), _of_each(one.jars)) for one in with_jars)
    return (*lines, say(MIXED)) if lines and any(dose.mixed for dose in made.batch.own.doses) else lines


def _labels(studio: Studio, fill: Fill, is_one_of_several: bool) -> str:
    name, packed = container_name(studio, fill), fill.units > 1
    if is_one_of_several:
        said = message("Labels for the {container} (one for a package of {units})") if packed else message("Labels for the {container}")
    else:
        said = message("Labels (one for a package of {units})") if packed else message("Labels")
    return say(said, container=name, units=fill.units)


def _of_each(jars: tuple[Jar, ...]) -> str:
    counts = Counter(variant_name(jar.variant) for jar in jars)
    if len(counts) == 1 and "" in counts:
        return str(len(jars))
    said = ("; " if any("," in name for name in counts) else ", ").join(f"{count} {name}" for name, count in counts.most_common())
    left_open = sum(jar.is_open for jar in jars)
    return f"{said}. {_open_words(left_open, len(jars))}" if left_open else said


def _open_words(left_open: int, all_labels: int) -> str:
    if left_open == all_labels:
        return say("No choice is known yet, so they are spread evenly over what is offered")
    return say_count(
        "{count} of these stands for open choices and spare containers, spread evenly over what is offered",
        "{count} of these stand for open choices and spare containers, spread evenly over what is offered",
        left_open,
    )


def label_totals(edition: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield a line for each sheet of labels to print, with how many labels it has, and for what keeps others from being printed."""
    yield from map(ToPrint, label_tasks(edition, plan))
    for made in (made for made in plan.made if not labels_are_held(edition, plan, made)):
        for one in (one for one in made.containers if one.jars):
            kind = () if one.filling is made.batch.own else (container_name(edition.studio, one.filling.fill),)
            product, spare = ", ".join((within(made.batch.recipe.name), *kind)), wished(edition.studio, plan).spare
            if spare:
                yield ToPrint(say("Labels, {product}: {number}, and {spare} spare", product=product, number=len(one.jars), spare=spare))
            else:
                yield ToPrint(say("Labels, {product}: {number}", product=product, number=len(one.jars)))
            blanks = text_of(edition.studio, plan, made.batch, one.jars[0]).blanks()
            if blanks:
                yield ToPrint(say("Write by hand on each label, {product}: {blanks}", product=product, blanks=listed(blanks)))


def label_order(plan: ClassPlan) -> str:
    """Return in words the order in which labels lie on their sheets; empty where nobody is listed."""
    if not plan.guests:
        return ""
    left = plan.students - len(plan.guests)
    if left <= 0:
        return say("Labels lie on their sheets in the order of this list, then the spare ones.")
    return say_count(
        "Labels lie on their sheets in the order of this list, then those of {count}\u00a0student who is not listed, then the spare ones.",
        "Labels lie on their sheets in the order of this list, then those of {count}\u00a0students who are not listed, then the spare "
        "ones.",
        left,
    )
