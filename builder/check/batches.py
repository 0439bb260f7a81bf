"""The batches of a class sheet, one by one, as the rules on sheets look at them; and the findings of all of them, each said once."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet
from builder.model.figure import Figure
from builder.model.finding import Finding, caution, stop
from builder.model.ingredient import Ingredient
from builder.model.labelling import ANY_REGION, Labelling
from builder.model.limit import ColourRule, Limit
from builder.model.place import Place
from builder.model.studio import Studio

_PURPOSE = {
    "class": "the class batch",
    "group": "the batch of one group",
    "student": "the batch of one student",
    "teacher": "the teacher's batch",
}


@dataclass(frozen=True)
class BatchFinding:
    """A finding that holds for a batch: what is wrong in words that fit every batch, and the batch with its own numbers (`case`).

    The case is empty where the finding is about the recipe, whatever its batch.
    """

    finding: Finding
    case: str


@dataclass(frozen=True)
class Batch:
    """One batch with what a finding says of it: its name, the classes it holds back (`about`), and where its size is written.

    `region` and `limits` are the studio's; `cards` are the studio's, for what students may choose.
    """

    name: str
    about: frozenset[str]
    sheet: BatchSheet
    constants: Mapping[str, Figure]
    size_place: Place | None = None
    region: str = ""
    limits: tuple[Limit, ...] = ()
    colour_rules: tuple[ColourRule, ...] = ()
    cards: Mapping[str, Ingredient] = field(default_factory=dict)
    labelling: Labelling = ANY_REGION

    def stop(self, name: str, place: Place, wrong: str, remedy: str, case: str) -> BatchFinding:
        """Make a stop about this batch."""
        return BatchFinding(stop(name, place, f"{self.sheet.recipe.name}: {wrong}", remedy, about=self.about), case)

    def caution(self, name: str, place: Place, wrong: str, remedy: str, case: str) -> BatchFinding:
        """Make a caution about this batch."""
        return BatchFinding(caution(name, place, f"{self.sheet.recipe.name}: {wrong}", remedy, about=self.about), case)

    def weighed_in(self, unit: str) -> str:
        """Name the batch, and the unit in which it is weighed where that is not the gram."""
        return self.name if unit == "g" else f"{self.name}, in ounces"


def batch_of(name: str, sheet: BatchSheet, studio: Studio, about: frozenset[str] = frozenset()) -> Batch:
    """Give one batch with what the rules need of the studio."""
    return Batch(
        name,
        about,
        sheet,
        studio.constants,
        region=studio.profile.region,
        limits=studio.limits,
        colour_rules=studio.colour_rules,
        cards=studio.ingredients,
        labelling=studio.labelling,
    )


def batches_of(sheet: ClassSheet, studio: Studio) -> Iterator[Batch]:
    """Give every batch of a class: those made in class, then those for home."""
    about = frozenset({sheet.studio_class.key})
    for made in sheet.made:
        for planned in made.batches:
            people = f" for {sheet.students} students" if planned.purpose == "class" else ""
            name = f"{_PURPOSE[planned.purpose]}{people}"
            yield batch_of(name, planned.sheet, studio, about)
            for other in planned.also:
                yield batch_of(f"{name}, in the {other.recipe.fill.container}", other, studio, about)
        for home in made.home:
            name = f"the home batch of {home.size.written}"
            yield replace(batch_of(name, home.sheet, studio, about), size_place=home.size.place)


def say_once(found: Iterable[BatchFinding]) -> list[Finding]:
    """Make one finding of those that say the same of the same place and class, with every batch that it holds for.

    What holds for a recipe whatever its batch is said once for all classes that make it.
    """
    alike: dict[tuple[object, ...], list[BatchFinding]] = {}
    for one in found:
        finding = one.finding
        alike.setdefault((finding.name, finding.place, finding.wrong, finding.about if one.case else None), []).append(one)
    return [_merge(several) for several in alike.values()]


def _merge(several: list[BatchFinding]) -> Finding:
    first = several[0].finding
    cases = "; ".join(dict.fromkeys(one.case for one in several if one.case))
    remedy = " ".join(dict.fromkeys(one.finding.remedy for one in several))
    about = frozenset().union(*(one.finding.about for one in several))
    return replace(first, wrong=f"{first.wrong} This holds for {cases}." if cases else first.wrong, remedy=remedy, about=about)
