"""The batches of a class plan, one by one, as the rules on batches look at them; and the findings of all of them, each said once.

Decided: what several batches of a class have alike is one finding that lists them with their numbers. Why: the same sentence three times
hides the next one.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from builder.model.dose.limit import ColourRule, FieldRule, Limit
from builder.model.finding import Finding, caution, stop
from builder.model.label.labelling import ANY_REGION, Labelling
from builder.model.label.region import NO_REGION, Region
from builder.model.place import Place
from builder.model.recipe.figure import Figure
from builder.model.recipe.filling import Filling
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import WeighingUnit
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.subject import HomeSheet, Labels, Subject, WholeClass, WholeRecipe
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.pot_for import PotFor
from builder.rules.pot_words import POT_WORDS
from builder.words.plain_number import how_many, plain_number

NO_LABEL = "Accepted with a reason, this product gets no label sheet."


@dataclass(frozen=True)
class BatchFinding:
    """A finding that holds for a batch: what is wrong in words that fit every batch, and the batch with its own numbers (`case`).

    The case is empty where the finding is about the recipe, whatever its batch. Cases are listed together where `told_with` is the same:
    those of one class.
    """

    finding: Finding
    case: str
    told_with: frozenset[Subject] = frozenset()


@dataclass(frozen=True)
class Batch:
    """One batch in one kind of container, with what a finding says of it: its name, what it is made for, and where its size is written.

    `of` is what a finding is about that holds whatever the size of the batch (its class, or its recipe), `itself` what one is about that
    holds for this batch alone (its date, its home sheet; None: the same). `region` and `limits` are the studio's; `cards` are the studio's,
    for what students may choose.
    """

    name: str
    of: Subject
    worked: WorkedBatch
    filling: Filling
    constants: Mapping[str, Figure]
    size_place: Place | None = None
    region: Region = NO_REGION
    limits: tuple[Limit, ...] = ()
    colour_rules: tuple[ColourRule, ...] = ()
    field_rules: tuple[FieldRule, ...] = ()
    cards: Mapping[str, Ingredient] = field(default_factory=dict)
    labelling: Labelling = ANY_REGION
    itself: Subject | None = None

    def stop(self, name: str, place: Place, wrong: str, remedy: str, case: str, *, acceptable: bool = False) -> BatchFinding:
        """Make a stop about this batch, or, without a case, about all of its class."""
        return self._told(stop(name, place, self._of_recipe(wrong), remedy, about=self._about(case), acceptable=acceptable), case)

    def caution(self, name: str, place: Place, wrong: str, remedy: str, case: str) -> BatchFinding:
        """Make a caution about this batch, or, without a case, about all of its class."""
        return self._told(caution(name, place, self._of_recipe(wrong), remedy, about=self._about(case)), case)

    def label_stop(self, name: str, place: Place, wrong: str, remedy: str, case: str) -> BatchFinding:
        """Make a stop about what the labels of the recipe say. It holds back nothing else, and may be accepted: then there is no label."""
        about = frozenset[Subject]({Labels(self.worked.recipe.key)})
        return self._told(stop(name, place, self._of_recipe(wrong), f"{remedy} {NO_LABEL}", about=about, acceptable=True), case)

    def _of_recipe(self, wrong: str) -> str:
        return f"{self.worked.recipe.name}: {wrong}"

    def _about(self, case: str) -> frozenset[Subject]:
        return frozenset({self.itself if self.itself and case else self.of})

    def _told(self, finding: Finding, case: str) -> BatchFinding:
        return BatchFinding(finding, case, frozenset({self.of}))

    def weighed_in(self, unit: WeighingUnit) -> str:
        """Name the batch, and the unit in which it is weighed where that is not the gram."""
        return self.name if unit == "g" else f"{self.name}, in ounces"


def batch_of(
    name: str, batch: WorkedBatch, studio: Studio, of: Subject, itself: Subject | None = None, filling: Filling | None = None
) -> Batch:
    """Return one batch, in the recipe's own container unless another is named, with what the rules need of the studio."""
    return Batch(
        name,
        of,
        batch,
        filling or batch.own,
        studio.constants,
        region=studio.region,
        limits=studio.limits,
        colour_rules=studio.colour_rules,
        field_rules=studio.field_rules,
        cards=studio.ingredients,
        labelling=studio.labelling,
        itself=itself,
    )


def batches_of(plan: ClassPlan, studio: Studio) -> Iterator[Batch]:
    """Yield every batch of a class: those made in class, then those for home."""
    of = WholeClass(plan.studio_class.key)
    for made in plan.made:
        for planned in made.batches:
            people = f" for {how_many(plan.students, 'student')}" if planned.purpose is PotFor.CLASS else ""
            name = f"the batch of {POT_WORDS[planned.purpose].who}{people}"
            for one in planned.batch.fillings:
                filled = name if one is planned.batch.own else f"{name}, in the {one.fill.container}"
                yield batch_of(filled, planned.batch, studio, of, plan.subject, one)
        for home in made.home:
            itself = HomeSheet(of.key, made.make.recipe.text, home.size.written)
            batch = batch_of(f"the home batch of {home.size.written}", home.batch, studio, of, itself)
            yield replace(batch, size_place=home.size.place)


def nominal_batch(batch: WorkedBatch, studio: Studio) -> Batch:
    """Return the batch at which a recipe is looked at that is worked out for no class."""
    return batch_of(f"a nominal batch of {plain_number(batch.grams.total.grams, 1)} g", batch, studio, WholeRecipe(batch.recipe.key))


def say_once(found: Iterable[BatchFinding]) -> list[Finding]:
    """Make one finding of those that say the same of the same place and class, with every batch that it holds for.

    What holds for a recipe whatever its batch is said once for all classes that make it.
    """
    alike: dict[tuple[object, ...], list[BatchFinding]] = {}
    for one in found:
        finding = one.finding
        alike.setdefault((finding.name, finding.place, finding.wrong, one.told_with if one.case else None), []).append(one)
    return [_merge(several) for several in alike.values()]


def unite(findings: Iterable[Finding]) -> list[Finding]:
    """Make one finding of those that say the same of the same place, about all that each is about."""
    alike: dict[Finding, set[Subject]] = {}
    for finding in findings:
        alike.setdefault(replace(finding, about=frozenset()), set()).update(finding.about)
    return [replace(finding, about=frozenset(about)) for finding, about in alike.items()]


def _merge(several: list[BatchFinding]) -> Finding:
    first = several[0].finding
    cases = "; ".join(dict.fromkeys(one.case for one in several if one.case))
    remedy = " ".join(dict.fromkeys(one.finding.remedy for one in several))
    about = frozenset().union(*(one.finding.about for one in several))
    return replace(first, wrong=f"{first.wrong} This holds for {cases}." if cases else first.wrong, remedy=remedy, about=about)
