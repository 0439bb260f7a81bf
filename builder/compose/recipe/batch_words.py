"""The batches of a product for the teacher's sheet: weighings, portions, lye, and the sums behind them."""

from builder.compose.dose.dose_words import view_choices
from builder.compose.edition import Edition
from builder.compose.formula.heat_words import heat_lines
from builder.compose.formula.ph_words import ph_words
from builder.compose.label.code_words import code_words
from builder.compose.label.label_questions import labels_are_held, no_labels
from builder.compose.lye.lye_words import staff_lye
from builder.compose.lye.soap_words import soap_facts
from builder.compose.punctuation import labelled
from builder.compose.recipe.ingredient_tables import staff_table
from builder.compose.recipe.portion_words import container_name, containers_of, left_over, read_both_ways
from builder.compose.recipe.sums import view_sums
from builder.compose.recipe.wording import grams, listed, within
from builder.compose.views.teacher import BatchView, Fact, ProductBatches, SumsView
from builder.model.lye.lye_solution import LyeSolution
from builder.model.recipe.filling import Filling
from builder.model.recipe.size import PeopleSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, Containers, MadeProduct, PlannedBatch
from builder.rules.pot_words import POT_WORDS
from builder.words.say import say, say_count


def view_batches(edition: Edition, plan: ClassPlan, made: MadeProduct) -> ProductBatches:
    """Return the batches of one product."""
    studio, batch = edition.studio, made.batch
    return ProductBatches(
        name=batch.recipe.name,
        containers=say("{containers} in all", containers=listed([_in_all(studio, one) for one in made.containers])),
        left_over=_left_over(studio, plan, made),
        batches=view_worked(studio, plan, made),
        choices=view_choices(studio, made.filled),
        codes=code_words(plan, made, labelled=not labels_are_held(edition, plan, made)),
        labels=no_labels(edition, plan, made),
    )


def view_worked(studio: Studio, plan: ClassPlan, made: MadeProduct) -> tuple[BatchView, ...]:
    """Return each planned batch of a product as it was worked out."""
    return tuple(_batch(studio, plan, planned) for planned in made.batches)


def _left_over(studio: Studio, plan: ClassPlan, made: MadeProduct) -> str:
    many = left_over(studio, plan, made)
    if not many:
        return ""
    return say_count(
        "Group {group} has {count}\u00a0person and makes the batch of a whole group: {many} more than it takes, without a label.",
        "Group {group} has {count}\u00a0people and makes the batch of a whole group: {many} more than it takes, without a label.",
        plan.last_group,
        group=plan.groups,
        many=many,
    )


def _in_all(studio: Studio, containers: Containers) -> str:
    name = container_name(studio, containers.filling.fill)
    return f"{containers_of(studio, containers.filling.fill, containers.in_all)} ({name})"


def batch_title(planned: PlannedBatch) -> str:
    """Return in words whose batch it is and how often it is made."""
    title = say(POT_WORDS[planned.purpose].title)
    if planned.copies == 1:
        return title
    return say_count("{title}, made {count}\u00a0time", "{title}, made {count}\u00a0times", planned.copies, title=title)


def sums_of(made: MadeProduct) -> tuple[SumsView, ...]:
    """Return the sums of each batch of a product."""
    return tuple(view_sums(labelled(planned.batch.recipe.name, batch_title(planned)), planned.batch) for planned in made.batches)


def _batch(studio: Studio, plan: ClassPlan, planned: PlannedBatch) -> BatchView:
    batch = planned.batch
    return BatchView(
        batch_title(planned),
        staff_table(batch),
        tuple(_at_the_table(studio, batch)),
        tuple(_portions(studio, batch)),
        staff_lye(batch, _solutions(plan, planned), f"{batch.recipe.key}-{planned.purpose}"),
        soap_facts(batch),
        heat_lines(batch),
    )


def _solutions(plan: ClassPlan, planned: PlannedBatch) -> tuple[LyeSolution, ...]:
    """Return the lye solutions that go into the pots of a planned batch; one for several of them stands with the first."""
    solutions = plan.weighing.solutions_of(planned.batch.recipe.name)
    return tuple(lye for lye in solutions if lye.bottles and lye.bottles[0].purpose == planned.purpose)


def _at_the_table(studio: Studio, batch: WorkedBatch) -> list[Fact]:
    """Return what is read off a scale or a strip while a batch is made and filled."""
    portions = batch.own.portions
    facts = [fact for one in batch.fillings for fact in _filling(studio, one)]
    if isinstance(batch.size, PeopleSize) and batch.size.demo:
        facts.append(Fact(say("To show"), grams(batch.size.demo)))
    if portions.all_from is not None and portions.wanted:
        went_in, least = grams(batch.own.read.finished), grams(batch.own.read.all_from or batch.own.read.finished)
        said = say("{went_in} went in; all containers are filled from {least}", went_in=went_in, least=least)
        facts.append(Fact(say("Weigh the finished batch"), said))
    facts += _unlimited(batch)
    ph = ph_words(batch)
    return [*facts, Fact(say("pH"), ph)] if ph else facts


def _portions(studio: Studio, batch: WorkedBatch) -> list[Fact]:
    """Return how a batch divides."""
    facts = [Fact(say("Containers filled"), containers_of(studio, one.fill, one.portions.yields)) for one in batch.fillings]
    if isinstance(batch.size, PeopleSize) and batch.size.left_in_the_pot:
        facts.append(Fact(say("Stays in the pot"), grams(batch.size.left_in_the_pot)))
    if batch.smallest:
        facts.append(Fact(say("Smallest sensible batch on these scales"), say("about {weight}", weight=grams(batch.smallest))))
    return [*facts, Fact(say("Left over"), grams(batch.own.read.left))]


def _unlimited(batch: WorkedBatch) -> list[Fact]:
    """Name the scents for which nobody has published a limit for this use, instead of passing over them."""
    if not batch.unlimited:
        return []
    names = listed([within(card.name) for card in batch.unlimited])
    words = say("{names}. Only what holds for all scent together was compared; the supplier's certificate decides", names=names)
    return [Fact(say("No published limit for this use"), words)]


def _filling(studio: Studio, filling: Filling) -> list[Fact]:
    """Return what the scale reads for one kind of container."""
    read, name = filling.read, container_name(studio, filling.fill)
    facts = []
    if read.poured != read.fill:
        facts.append(
            Fact(
                say("Pour, reading on a tared cup"),
                say("{weight} for each {container}", weight=read_both_ways(filling, lambda one: one.poured), container=name),
            )
        )
    container = studio.container(filling.fill.container)
    said = {"weight": read_both_ways(filling, lambda one: one.fill), "container": name}
    if container and container.is_mould:
        return [*facts, Fact(say("Weight of a portion"), say("{weight} for each {container}", **said))]
    return [*facts, Fact(say("Fill, reading on a tared container"), say("{weight} in each {container}", **said))]
