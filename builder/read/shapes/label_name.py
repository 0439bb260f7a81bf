"""The shape of the names on a label, and of what the supplier of a blend says of its parts."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import AfterValidator, ValidationInfo, model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.declaration import Range, polytopes_of
from builder.model.recipe.ingredient import AllergenList, AllergenStatement, Certificate, LabelName
from builder.model.recipe.product import Contact
from builder.read.label.share_ranges import parse_share_range
from builder.read.makes import Makes, becomes
from builder.read.shapes.fields import OneOrMore, SourceField, Text, Texts, reads
from builder.read.shapes.figure import KnownField
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError, quoted
from builder.read.values.values import member_of
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

FINDS = (FindingKind("label-names-unequal", STOP, "Two lists of names for the label do not go together."),)

ShareRange = Annotated[Range, reads(parse_share_range)]


class LabelNameShape(Shape, Makes[LabelName]):
    """The names on a label, in descending order of weight where it is a blend, and what else its supplier says of the parts."""

    inci: OneOrMore = needed("inci", "Olea Europaea Fruit Oil")
    """The INCI name; of a blend all of them in the supplier's order."""
    plain: OneOrMore = needed("plain", "olive oil")
    """The same in plain English, as many and in the same order."""
    known: KnownField = needed("known", "memory")
    """How the names are known."""
    stated: dict[str, ShareRange] = maybe("shares", {}, "{Aqua: 60 to 75 %}")
    """What the data sheet says of the share of a part: `40 to 50 %`, `at most 30 %`."""
    first: Text | None = maybe("below one per cent from", example="Phenoxyethanol")
    """The first part that is less than one per cent of the blend."""
    colours: Texts = maybe("colours", (), "[Titanium Dioxide]")
    """The parts that stand last as colours."""
    nano: Texts = maybe("nano", (), "[Titanium Dioxide]")
    """The parts that are nanomaterials."""

    @becomes("colours")
    def _numbers_of_colours(self, _: PlacedData) -> frozenset[int]:
        return self.numbers(self.colours)

    @becomes("nano")
    def _numbers_of_nano(self, _: PlacedData) -> frozenset[int]:
        return self.numbers(self.nano)

    @model_validator(mode="after")
    def _are_as_many(self) -> Self:
        if len(self.inci) != len(self.plain):
            wrong = f"{len(self.inci)} names stand under inci and {len(self.plain)} under plain, and each needs its counterpart."
            raise TextError("label-names-unequal", wrong, "Give both lists the same things in the same order.")
        return self

    @model_validator(mode="after")
    def _speak_of_parts(self) -> Self:
        for name in self.stated:
            self._place(name, "shares", name, at_key=True)
        for key, names in (("colours", self.colours), ("nano", self.nano)):
            for number, name in enumerate(names):
                self._place(name, key, number)
        if self.first is not None:
            self._place(self.first, "below one per cent from")
        return self

    @model_validator(mode="after")
    def _can_be(self) -> Self:
        if not polytopes_of(len(self.inci), self.below, self.shares, sorted(self.numbers(self.colours))):
            wrong = (
                "No blend fits these figures: they go against the order of the names, against the line at one per cent, or against 100 %."
            )
            remedy = "Copy the names again in the supplier's own order, and each figure beside its own name."
            raise TextError("label-shares-impossible", wrong, remedy, at=("shares",) if self.stated else ("inci",))
        return self

    @property
    def shares(self) -> dict[int, Range]:
        """Return the supplier's figures by the number of the part."""
        return {self._place(name): share for name, share in self.stated.items()}

    @property
    def below(self) -> int | None:
        """Return the number of the first part below one per cent."""
        return None if self.first is None else self._place(self.first)

    def numbers(self, names: Texts) -> frozenset[int]:
        """Return the numbers of some parts."""
        return frozenset(self._place(name) for name in names)

    def _place(self, name: str, *at: str | int, at_key: bool = False) -> int:
        known = [fold(one) for one in self.inci]
        if fold(name) not in known:
            remedy = f"Write one of the names under inci.{did_you_mean(name, self.inci)}"
            raise TextError("word-unknown", f"{quoted(name)} is not among the parts of this blend.", remedy, at=at, at_key=at_key)
        return known.index(fold(name))


def _judge_names(contains: dict[str, Range], info: ValidationInfo) -> dict[str, Range]:
    allergens: frozenset[str] = info.context.allergens if info.context else frozenset()
    for name in contains:
        if fold(name) not in allergens:
            remedy = f"Write its name as the table of fragrance allergens has it.{did_you_mean(name, sorted(allergens))}"
            wrong = f"{quoted(name)} is not in the table of fragrance allergens."
            raise TextError("word-unknown", wrong, remedy, at=(name,), at_key=True)
    return {fold(name): share for name, share in contains.items()}


def _folded(contains: dict[str, Range]) -> dict[str, Range]:
    return {fold(name): share for name, share in contains.items()}


def _judge_contacts(at_most: dict[str, Range]) -> dict[str, Range]:
    for name, (low, high) in at_most.items():
        if fold(name) not in tuple(Contact):
            wrong = f"{quoted(name)} is not a place where a product goes."
            raise TextError("word-unknown", wrong, f"Write one of these: {', '.join(Contact)}.", at=(name,), at_key=True)
        if low != high:
            remedy = "Write the one figure of the certificate, for instance 2.5 %."
            raise TextError("word-unknown", "The most of a scent is one figure, and this is a range.", remedy, at=(name,))
    return {fold(name): share for name, share in at_most.items()}


class AllergenStatementShape(Shape, Makes[AllergenStatement]):
    """The supplier's statement of the fragrance allergens of a scent."""

    covers: Annotated[AllergenList, reads(member_of(AllergenList))] = needed("covers", "extended list")
    """Which list of allergens the statement goes through: that before 2023 (original) or the extended one."""
    contains: Annotated[dict[str, ShareRange], AfterValidator(_judge_names)] = needed("contains", "{Linalool: 25 to 45 %}")
    """Each allergen that is in it with its share. What is not listed here is not in it."""
    source: SourceField = needed("source", "our-supplier")
    """The short name of your supplier, from your `shelf/sources.yaml`."""
    at: Text = needed("at", '"allergen statement of lot 12"')
    """Which statement it is: its lot or its date."""
    known: KnownField = needed("known", "supplier")
    """How it is known; `supplier` where the supplier states it."""


class CertificateShape(Shape, Makes[Certificate]):
    """The supplier's certificate of a scent: what it contains of constituents, and how much of it a product may hold at most."""

    contains: Annotated[dict[str, ShareRange], AfterValidator(_folded)] = maybe("contains", {}, "{Methyl Eugenol: at most 0.01 %}")
    """The constituents that it states, each with its share."""
    at_most: Annotated[dict[str, ShareRange], AfterValidator(_judge_contacts)] = maybe("at most", {}, "{leave-on: 2.5 %, rinse-off: 10 %}")
    """The most of the scent that a product may hold, by where the product goes."""
    source: SourceField = needed("source", "our-supplier")
    """The short name of your supplier, from your `shelf/sources.yaml`."""
    at: Text = needed("at", '"certificate of lot 12"')
    """Which certificate it is: its lot or its date."""
    known: KnownField = needed("known", "supplier")
    """How it is known; `supplier` where the supplier states it."""

    @becomes("at_most")
    def _most(self, _: PlacedData) -> dict[str, Fraction]:
        return {contact: high for contact, (_, high) in self.at_most.items()}
