"""What labels say of an earlier batch: that it is about something which comes from one, and has had the time to cure.

Decided: the earlier batch stands at a date, and not at the class. Why: another date takes home bars of another batch, and a wrong day on a
label is worse than none.

Decided: a bar of half of what is poured to half as much again is met in silence. Why: bars are cut by eye and lose water, and none of that
comes to half of one; what lies outside is a slip of the pen, such as an ounce for a gram (this studio's own measure, no source).
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.rule import CLASS, CLASS_IN_STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.label.earlier_batch import EarlierBatch
from builder.model.studio import Studio
from builder.model.subject import Labels
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.rules.durability import counts_from_the_cure, durability_in
from builder.words.plain_number import plain_number

LEAST, MOST = Fraction(1, 2), Fraction(3, 2)


@rule_on(
    CLASS,
    FindingKind("earlier-batch-unclear", STOP, "A date says of an earlier batch what no product of the class can mean."),
    FindingKind("earlier-batch-too-young", CAUTION, "Soap from an earlier batch has not had its time to cure on the day of the class."),
    FindingKind("earlier-batch-cure-unknown", CAUTION, "Nothing says how long soap from an earlier batch cures: its last day stays blank."),
)
def find_earlier_batches_amiss(plan: ClassPlan) -> Iterator[Finding]:
    """Look up which product is meant, and count from the day on which it was made."""
    date = plan.date
    earlier = date.labels if date else None
    if date is None or earlier is None:
        return
    meant = [made for made in plan.made if plan.comes_from_before(made.batch.product)]
    about = frozenset(Labels(made.make.recipe.text, plan.studio_class.key) for made in plan.made)
    if len(meant) != 1:
        wrong = "nothing that this class takes home was made before it" if not meant else "several soaps of this class were made before it"
        yield stop(
            "earlier-batch-unclear",
            earlier.place,
            f"The day, the batch and the weight of an earlier batch stand here, and {wrong}. They go on the labels of the one soap that is "
            "shown and taken home cured.",
            "Take them out, and let the labels be written by hand." if meant else "Take them out: labels bear the day of the class.",
            about=about,
        )
    elif earlier.made_on.date() >= date.on.date():
        yield stop(
            "earlier-batch-unclear",
            earlier.place,
            "The earlier batch is to have been made on the day of the class or after it, so that the day on the labels would be wrong.",
            "Write the day on which the batch that is taken home was made.",
            about=about,
        )
    elif meant[0].batch.recipe.cure is None and counts_from_the_cure(meant[0].batch.recipe.keeps):
        yield _cure_unknown(plan, meant[0], earlier)
    else:
        yield from _too_young(plan, meant[0], earlier)


def _cure_unknown(plan: ClassPlan, made: MadeProduct, earlier: EarlierBatch) -> Finding:
    recipe = made.batch.recipe
    return caution(
        "earlier-batch-cure-unknown",
        earlier.place,
        f'{recipe.name} keeps "{recipe.keeps}", and its recipe does not say how long it cures. So the last day on its label is a line to '
        "write on, and nobody has worked out whether these bars have cured.",
        'Write `cure:` in the recipe, such as `cure: {time: 6 weeks, loses: 12 %, measured: "how, when"}`; or accept it, and write the day '
        "on each label by hand.",
        about=frozenset({Labels(recipe.key, plan.studio_class.key)}),
    )


def _too_young(plan: ClassPlan, made: MadeProduct, earlier: EarlierBatch) -> Iterator[Finding]:
    recipe = made.batch.recipe
    cure = durability_in(recipe.cure.time) if recipe.cure else None
    if plan.date is None or cure is None:
        return
    cured = cure.after(earlier.made_on.date())
    if cured > plan.date.on.date():
        days = (cured - plan.date.on.date()).days
        late = "the day after the class" if days == 1 else f"{days} days after the class"
        yield caution(
            "earlier-batch-too-young",
            earlier.place,
            f"{recipe.name}: a batch of {earlier.made_on.date().isoformat()} has cured on {cured.isoformat()}, {late}. "
            "Young soap is harsher and heavier than its label says.",
            "Give out bars of an older batch; or accept it, and say how they were tested.",
            about=frozenset({Labels(made.make.recipe.text, plan.studio_class.key)}),
        )


@rule_on(
    CLASS_IN_STUDIO,
    FindingKind(
        "earlier-weight-doubtful", CAUTION, "What a bar of an earlier batch weighs is far from what is poured, or no label shows it."
    ),
)
def find_earlier_weights_amiss(plan: ClassPlan, studio: Studio) -> Iterator[Finding]:
    """Hold the weight against what the recipe pours, and against how the label declares it."""
    earlier = plan.date.labels if plan.date else None
    if earlier is None or earlier.weighed is None:
        return
    for made in (made for made in plan.made if plan.comes_from_before(made.batch.product)):
        batch, weighed, poured = made.batch, earlier.weighed.grams, made.batch.own.fill.weight.grams
        about = frozenset({Labels(made.make.recipe.text, plan.studio_class.key)})
        name = batch.recipe.name
        if batch.product.by_volume(studio.region) and batch.recipe.density is not None:
            wrong = f"{name}: its label declares what is in it by volume, so that the weight of the earlier batch stands nowhere."
            yield caution("earlier-weight-doubtful", earlier.place, wrong, "Take out `weighed:`.", about=about)
        elif not LEAST * poured <= weighed <= MOST * poured:
            said, meant = (plain_number(one, 5) for one in (weighed, poured))
            wrong = (
                f"{name}: its lightest bar is said to weigh {said} g, and {meant} g are poured into one. Its label declares that weight, "
                "and a weight that is too high misleads whoever gets the bar."
            )
            yield caution("earlier-weight-doubtful", earlier.place, wrong, "Weigh it again, and look at the unit.", about=about)
