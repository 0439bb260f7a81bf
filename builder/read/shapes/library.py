"""The shapes of the smaller files of the stock: sources, containers, products, cautions, and the heads of passages."""

from typing import Annotated, Self

from pydantic import PlainValidator, ValidationInfo, model_validator

from builder.model.recipe.container import ContainerForm
from builder.model.recipe.product import Contact, DeclaredBy
from builder.model.recipe.recipe import USED_ON
from builder.read.shapes.fields import (
    NOT_EMPTY,
    Capacity,
    Day,
    Inside,
    LengthField,
    Number,
    PartOfWhole,
    ProductField,
    SourceField,
    Text,
    Texts,
    Weight,
    YesOrNo,
    check_languages,
    reads,
)
from builder.read.shapes.figure import KnownField
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.text_error import TextError, quoted
from builder.read.values.values import member_of, word_of
from builder.words.nearest import did_you_mean

_SOURCE_KINDS = (
    "standard", "pharmacopoeia", "law", "handbook", "article", "official guidance", "trade", "computed", "practice",
)  # fmt: skip


class SourceShape(Shape):
    """One entry of `sources.yaml`."""

    title: Text = needed("title", "Standard for Named Vegetable Oils, CXS 210-1999")
    by: Text = maybe("by", "")
    kind: Annotated[str, reads(word_of(*_SOURCE_KINDS))] = needed("kind", "standard")
    about: Text = maybe("about", "")


class ContainerShape(Shape):
    """One entry of `containers.yaml`."""

    capacity: Capacity | None = maybe("capacity")
    inside: Inside | None = maybe("inside")
    fill_weight: Weight | None = maybe("fill weight")
    fill_weight_of: tuple[ProductField, ...] = maybe("fill weight of", (), "[lotion]")
    head_space: PartOfWhole | None = maybe("head space")
    height: LengthField | None = maybe("height")
    around: LengthField | None = maybe("around")
    width: LengthField | None = maybe("width")
    lid: LengthField | None = maybe("lid")
    shape: Annotated[ContainerForm, reads(member_of(ContainerForm))] = needed("shape", "cylinder")
    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "trade size")
    known: KnownField = needed("known", "practice")


class CitationShape(Shape):
    """Where a statement was read."""

    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "page 112")
    known: KnownField = needed("known", "read")


class UsualPhShape(CitationShape):
    """The pH that a kind of product usually has, and how it is measured."""

    low: Number = needed("low", "4.5")
    high: Number = needed("high", "6.5")
    measured: Text = needed("measured", "as it is")


class ProductShape(Shape):
    """One entry of `products.yaml`."""

    identity: Text = needed("identity", "Hand lotion")
    contact: Annotated[Contact, reads(member_of(Contact))] = needed("contact", "leave-on")
    made_with_lye: YesOrNo = needed("made with lye", "no")
    declared_by: Annotated[DeclaredBy, reads(member_of(DeclaredBy))] = needed("declared by", "weight")
    declared_by_in: dict[str, Annotated[DeclaredBy, reads(member_of(DeclaredBy))]] = maybe("declared by in", {}, "{Canada: volume}")
    usual_ph: UsualPhShape | None = maybe(
        "usual pH", example="{low: 4.5, high: 6.5, measured: as it is, source: a-source, at: page 7, known: read}"
    )
    meets_water: YesOrNo = maybe("wet hands in the jar", False)
    cooked: YesOrNo = maybe("cooked", False)
    used_on: tuple[Annotated[str, reads(word_of(*USED_ON))], ...] = maybe("used on", (), "[body]")
    usual_alkali: Text = maybe("usual alkali", "")


class OwnProductShape(ProductShape):
    """One entry of a studio's `shelf/products.yaml`."""

    like: Annotated[tuple[ProductField, ...], NOT_EMPTY] = needed("like", "[lotion]")
    translations: dict[str, Text] = maybe("translations", {}, "{French: Lotion}")

    @model_validator(mode="after")
    def _names_what_is_known(self, info: ValidationInfo) -> Self:
        check_languages(self.translations, info)
        known: tuple[str, ...] = info.context.regions if info.context else ()
        for region in self.declared_by_in:
            if region not in known:
                remedy = f"Write one of these: {', '.join(known)}.{did_you_mean(region, known)}"
                wrong = f"No rules for labels are known for {quoted(region)}."
                raise TextError("word-unknown", wrong, remedy, at=("declared by in", region), at_key=True)
        return self


class RegionRuleShape(Shape):
    """One rule of a region, and where it stands."""

    says: Text = needed("is", "Aqua")
    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "Article 19")
    known: KnownField = needed("known", "read")


class RegionShape(Shape):
    """One entry of `regions.yaml`."""

    in_words: Text = needed("in words")
    law: Text = needed("law")
    locale: Text = needed("locale")
    keeps_the_law_of: RegionRuleShape | None = maybe("keeps the law of")
    colours_that_are_allowed: RegionRuleShape = needed("colours that are allowed")
    net_contents: RegionRuleShape = needed("net contents")
    figures_below_100: RegionRuleShape | None = maybe("figures below 100")
    liquids: RegionRuleShape = needed("liquids")
    net_contents_stand: RegionRuleShape | None = maybe("net contents stand")
    open_jar_above: RegionRuleShape | None = maybe("open jar above")
    foaming_baths: RegionRuleShape | None = maybe("foaming baths")
    look_of_food: RegionRuleShape | None = maybe("look of food")
    person_may_also_be_in: RegionRuleShape | None = maybe("person may also be in")
    languages: RegionRuleShape = needed("languages")
    heading: RegionRuleShape = needed("heading")
    best_before: RegionRuleShape = needed("best before")
    names: RegionRuleShape = needed("names")
    water: RegionRuleShape = needed("water")
    fragrance: RegionRuleShape = needed("fragrance")
    flavour: RegionRuleShape = needed("flavour")
    flavours_and_scents: RegionRuleShape = needed("flavours and scents")
    colours: RegionRuleShape = needed("colours")
    exactly_one_per_cent: RegionRuleShape = needed("exactly one per cent")
    fragrance_last: RegionRuleShape = needed("fragrance last")
    may_contain: RegionRuleShape = needed("may contain")
    allergens: RegionRuleShape = needed("allergens")
    nano: RegionRuleShape = needed("nano")
    responsible_person: RegionRuleShape = needed("responsible person")
    with_little_room: RegionRuleShape = needed("with little room")
    soap: RegionRuleShape | None = maybe("soap")


class LanguageWordsShape(Shape):
    """The words that stand on every label."""

    colon: Annotated[str, PlainValidator(str)] = needed("colon", '":"')
    decimal_sign: Text = needed("decimal sign", '"."')
    net_weight: Text = needed("net weight", "Net weight")
    made: Text = needed("made", "Made")
    made_on: Text = needed("made on", "Made on")
    by: Text = needed("by", "By")
    batch: Text = needed("batch", "Batch")
    use: Text = needed("use", "Use")
    keeps: Text = needed("keeps", "keeps")
    once_opened: Text = needed("once opened", "Once opened, good for")
    made_at: Text = needed("made at", "Made at")
    responsible_person: Text = needed("responsible person", "Responsible person")
    not_for_sale: Text = needed("not for sale", "Not tested for sale.")


class LanguageShape(Shape):
    """One file of `languages/`."""

    name: Text = needed("name", "French")
    locale: Text = needed("locale", "fr_CA")
    words: LanguageWordsShape = needed("words")
    texts: dict[str, Text] = maybe("texts", {}, "{Soap: Savon}")


class CautionShape(Shape):
    """One file of `cautions/`."""

    name: Text = needed("name", "Hot fat")
    signal: Annotated[str, reads(word_of("danger", "warning", "caution", "notice"))] = needed("signal", "warning")
    hazard: Text = needed("hazard", "hot fat")
    what: Text = needed("what", "Hot fat burns deeply.")
    avoid: Annotated[Texts, NOT_EMPTY] = needed("avoid", "[Keep water away.]")
    if_it_happens: Annotated[Texts, NOT_EMPTY] = needed("if it happens", "[Cool the burn under running water.]")
    sources: Annotated[tuple[CitationShape, ...], NOT_EMPTY] = needed("sources", "[{source: a-source, at: page 112, known: read}]")
    reviewed: Day = needed("reviewed", "2026-11-25")


class PassageHeadShape(Shape):
    """The lines between hyphens at the top of a passage."""

    name: Text = needed("name", "Tare the cup")
    reviewed: Day = needed("reviewed", "2026-11-25")
    source: SourceField = needed("source", "common-practice")
