"""The shapes of the smaller files of the library: sources, containers, products, cautions, and the heads of passages."""

from typing import Annotated, Self

from pydantic import ValidationInfo, model_validator

from builder.model.label.region import Region, RegionRule
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.container import Container, Outside
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.figure import Figure, Source, SourceKind
from builder.model.recipe.product import Condition, Contact, DeclaredBy, Product
from builder.model.teaching.caution import CautionText, Signal
from builder.read.makes import Makes, becomes
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
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError, quoted
from builder.read.values.values import member_of
from builder.words.nearest import did_you_mean


class SourceShape(Shape, Makes[Source]):
    """One entry of `sources.yaml`."""

    title: Text = needed("title", "Standard for Named Vegetable Oils, CXS 210-1999")
    """The title of the work, or what the document is."""
    by: Text = maybe("by", "", example="The office that issued it")
    """Who wrote or issued it."""
    kind: Annotated[SourceKind, reads(member_of(SourceKind, tuple(SourceKind)[:-1]))] = needed("kind", "standard")
    """What kind of work it is."""
    about: Text = maybe("about", "", example="Edition of 2019, read on paper")
    """Edition, year, and how it was read."""


class ContainerShape(Shape, Makes[Container]):
    """One entry of `containers.yaml`."""

    capacity: Capacity | None = maybe("capacity", example="4 fl oz")
    """What it holds when it is full to the brim: a volume."""
    inside: Inside | None = maybe("inside", example="30 cm x 8 cm x 7 cm")
    """The inner size of a mould."""
    fill_weight: Weight | None = maybe("fill weight", example="28 g")
    """What the trade fills it with, by weight."""
    fill_weight_of: tuple[ProductField, ...] = maybe("fill weight of", (), "[lotion]")
    """The kinds of product of which `fill weight` holds. Without it, of all."""
    head_space: PartOfWhole | None = maybe("head space", example="5 %")
    """The share that stays empty. Without it 2 % (common practice, no source)."""
    height: LengthField | None = maybe("height", example="45 mm")
    """The height of the straight side, outside, as measured."""
    around: LengthField | None = maybe("around", example="210 mm")
    """The way around it, outside, as measured."""
    width: LengthField | None = maybe("width", example="60 mm")
    """The width of a flat face, outside, as measured."""
    lid: LengthField | None = maybe("lid", example="68 mm")
    """The lid across, as measured."""
    shape: Annotated[ContainerForm, reads(member_of(ContainerForm))] = needed("shape", "cylinder")
    """Its shape for a label. Where it has not been measured, its label panel is taken at the largest that capacity and shape allow."""
    source: SourceField = needed("source", "common-practice")
    """The short name of the work in which the size stands, or `common-practice`."""
    at: Text = needed("at", "trade size")
    """Where in it the size stands, or how you measured it."""
    known: KnownField = needed("known", "practice")
    """How it is known; `measured` where you measured it."""

    @becomes("fill_weight_of")
    def _names_of_products(self, _: PlacedData) -> tuple[str, ...]:
        return tuple(product.name for product in self.fill_weight_of)

    @becomes("outside")
    def _outside(self, placed: PlacedData) -> Outside:
        return self.made_as(Outside, placed)


class CitationShape(Shape):
    """Where a statement was read."""

    source: SourceField = needed("source", "common-practice")
    """The short name of the work, from sources.yaml; `common-practice` where there is none."""
    at: Text = needed("at", "page 112")
    """Where in the work it stands: table, page, section."""
    known: KnownField = needed("known", "read")
    """How it is known."""


class UsualPhShape(CitationShape, Makes[Figure]):
    """The pH that a kind of product usually has, and how it is measured."""

    low: Number = needed("low", "4.5")
    """The lowest that is usual."""
    high: Number = needed("high", "6.5")
    """The highest that is usual."""
    when: Text = needed("measured", "as it is")
    """How it is measured: as it is, or diluted."""

    @becomes("unit")
    def _unit(self, _: PlacedData) -> str:
        return "pH"


class NamedPhShape(UsualPhShape):
    """One entry of `usual_ph.yaml`."""

    names: Annotated[Texts, NOT_EMPTY] = needed("names", "[toner, mist]")
    """Whole words of the name of a kind of product."""


class ProductShape(Shape, Makes[Product]):
    """One entry of `products.yaml`."""

    identity: Text = needed("identity", "Hand lotion")
    """What a label calls it."""
    contact: Annotated[Contact, reads(member_of(Contact))] = needed("contact", "leave-on")
    """How it meets the body: leave-on, rinse-off, bath or lips; which limits and colours hold follows from it. What lies on the floor of a
    shower and runs over the feet, such as a steamer, counts as bath: scent is limited no less there, and the floor gets slippery."""
    made_with_lye: YesOrNo = needed("made with lye", "no")
    """Whether its recipes have a `lye:` block."""
    declared_by: Annotated[DeclaredBy, reads(member_of(DeclaredBy))] = needed("declared by", "weight")
    """Whether net contents are stated by weight or by volume."""
    declared_by_in: dict[str, Annotated[DeclaredBy, reads(member_of(DeclaredBy))]] = maybe("declared by in", {}, "{Canada: volume}")
    """The same for a region where it differs."""
    usual_ph: UsualPhShape | None = maybe(
        "usual pH", example="{low: 4.5, high: 6.5, measured: as it is, source: a-source, at: page 7, known: read}"
    )
    """The pH that such a product with water usually has."""
    meets_water: YesOrNo = maybe("wet hands in the jar", False, example="yes")
    """Whether wet hands go into its jar, which can spoil it."""
    cooked: YesOrNo = maybe("cooked", False, example="yes")
    """Whether it is a soap that is cooked until the lye is gone."""
    used_on: tuple[Annotated[BodyPart, reads(member_of(BodyPart))], ...] = maybe("used on", (), "[body]")
    """The parts of the body that it goes on; narrower limits hold for some."""
    counts_as: tuple[Annotated[Condition, reads(member_of(Condition))], ...] = maybe("counts as", (), "[scrub]")
    """What rules on the words of lessons take it for, whatever is in it: `fizz` (as a bath bomb), `scrub`."""
    usual_alkali: Text = maybe("usual alkali", "", example="sodium hydroxide")
    """The alkali of such a soap where a recipe states a weight without its name."""


class OwnProductShape(ProductShape):
    """One entry of a studio's `shelf/products.yaml`."""

    like: Annotated[tuple[ProductField, ...], NOT_EMPTY] = needed("like", "[lotion]")
    """The kinds of ours that it is used like: limits and warnings meant for those hold for it too. Silence would lift them, so it is
    needed."""
    translations: dict[str, Text] = maybe("translations", {}, "{French: Lotion}")
    """Its identity in another language, where your labels have two."""

    @becomes("like")
    def _names_of_its_like(self, _: PlacedData) -> tuple[str, ...]:
        return tuple(product.name for product in self.like)

    @becomes("counts_as")
    def _as_its_like(self, _: PlacedData) -> tuple[Condition, ...]:
        return (*self.counts_as, *(condition for product in self.like for condition in product.counts_as))

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


class RegionRuleShape(Shape, Makes[RegionRule]):
    """One rule of a region, and where it stands."""

    says: Text = needed("is", "Aqua")
    """What the rule says, in a word."""
    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "Article 19")
    known: KnownField = needed("known", "read")


class RegionShape(Shape, Makes[Region]):
    """One entry of `regions.yaml`."""

    in_words: Text = needed("in words")
    """The region inside a sentence."""
    law: Text = needed("law")
    """Its law inside a sentence."""
    locale: Text = needed("locale")
    """The code by which dates, times and money are written there."""
    keeps_the_law_of: RegionRuleShape | None = maybe("keeps the law of")
    """Another region whose law it has kept as its own, but for what its own rows say."""
    kept_as_of_the_end_of: RegionRuleShape | None = maybe("kept as of the end of")
    """The year at whose end that law was kept: what it has brought since is not law here."""
    colours_that_are_allowed: RegionRuleShape = needed("colours that are allowed")
    """The list by which colours are judged, or none."""
    colours_to_look_up: RegionRuleShape | None = maybe("colours to look up")
    """Where a studio looks colours up, where no list is known."""
    net_contents: RegionRuleShape = needed("net contents")
    """Whether net contents stand in ounces and metric units, or in metric units alone."""
    figures_below_100: RegionRuleShape | None = maybe("figures below 100")
    """How many figures metric contents below 100 g or mL have. Without it, three."""
    liquids: RegionRuleShape = needed("liquids")
    """What the contents of liquids go by, where that is not the weight."""
    net_contents_stand: RegionRuleShape | None = maybe("net contents stand")
    """Where on the panel the net contents stand."""
    open_jar_above: RegionRuleShape | None = maybe("open jar above")
    """How long something keeps, above which the time after opening stands in place of a date."""
    foaming_baths: RegionRuleShape | None = maybe("foaming baths")
    """What the label of a product that foams in the bath has to have."""
    look_of_food: RegionRuleShape | None = maybe("look of food")
    """What is said of a product that looks or smells like food."""
    person_may_also_be_in: RegionRuleShape | None = maybe("person may also be in")
    """Another region in which the responsible person is tolerated."""
    languages: RegionRuleShape = needed("languages")
    """The languages of a label, in order."""
    heading: RegionRuleShape = needed("heading")
    """The word that stands before the list of ingredients."""
    best_before: RegionRuleShape = needed("best before")
    """The words before a date until which a product is good."""
    names: RegionRuleShape = needed("names")
    """Which names ingredients have: INCI, or those of the dictionary with English."""
    water: RegionRuleShape = needed("water")
    """The name of water."""
    fragrance: RegionRuleShape = needed("fragrance")
    """The word under which scents are declared together."""
    flavour: RegionRuleShape = needed("flavour")
    """The word under which flavours are declared together."""
    flavours_and_scents: RegionRuleShape = needed("flavours and scents")
    """How flavours and scents are told apart."""
    colours: RegionRuleShape = needed("colours")
    """Where colours stand in the list."""
    exactly_one_per_cent: RegionRuleShape = needed("exactly one per cent")
    """Whether what is exactly one per cent may stand in any order."""
    fragrance_last: RegionRuleShape = needed("fragrance last")
    """Whether scent may stand last whatever its amount."""
    may_contain: RegionRuleShape = needed("may contain")
    """How colours that are in some of a series are declared."""
    allergens: RegionRuleShape = needed("allergens")
    """Which list of fragrance allergens has to be named, if any."""
    nano: RegionRuleShape = needed("nano")
    """How nanomaterials are marked."""
    responsible_person: RegionRuleShape = needed("responsible person")
    """Where the person has to be who answers for the product and stands on the label; none: nowhere in particular."""
    with_little_room: RegionRuleShape = needed("with little room")
    """What may stand on a tag, a card or a leaflet where there is little room."""
    soap: RegionRuleShape | None = maybe("soap")
    """What holds for soap that is nothing but the salts of fats."""

    @becomes("rules")
    def _rules(self, placed: PlacedData) -> dict[str, RegionRule]:
        said = {str(info.alias): getattr(self, field) for field, info in type(self).model_fields.items()}
        return {key: rule.make(placed.inside(key)) for key, rule in said.items() if isinstance(rule, RegionRuleShape)}


class CautionShape(Shape, Makes[CautionText]):
    """One file of `cautions/`. In one that has the name of a file of ours, what is left out is as ours has it."""

    stands_at = "name"
    name: Text = needed("name", "Hot fat")
    """The name of the caution, which stands over it."""
    signal: Annotated[Signal, reads(member_of(Signal))] = needed("signal", "warning")
    """The signal word."""
    hazard: Text = needed("hazard", "hot fat")
    """The hazard of ingredients and steps that brings it to a sheet."""
    what: Text = needed("what", "Hot fat burns deeply.")
    """What can happen."""
    avoid: Annotated[Texts, NOT_EMPTY] = needed("avoid", "[Keep water away.]")
    """What to do so that it does not happen, each a sentence."""
    gear: Texts = maybe("gear", (), "[oven mitts]")
    """What people put on against it. Take-home sheets list it with the tools, and the check list of a date counts it, unasked."""
    if_it_happens: Annotated[Texts, NOT_EMPTY] = needed("if it happens", "[Cool the burn under running water.]")
    """What to do when it has happened, each a sentence."""
    in_brief: Text = maybe("in brief", "", example='"On skin: running water at once."')
    """What to do when it has happened, for a step on a sheet whose first page about it says all of `if it happens`."""
    again: Text = maybe("again", "", example='"It burns skin and can blind: goggles and gloves on."')
    """Hazard and how to avoid it in a breath, for a later part of a take-home sheet that has said all of it in an earlier one."""
    sources: Annotated[tuple[CitationShape, ...], NOT_EMPTY] = needed("sources", "[{source: a-source, at: page 112, known: read}]")
    """Where it was read."""
    reviewed: Day = needed("reviewed", "2026-11-25")
    """The day on which somebody last read it through."""


class PassageHeadShape(Shape):
    """The lines between hyphens at the top of a passage."""

    name: Text = needed("name", "Tare the cup")
    """The name of the passage."""
    reviewed: Day = needed("reviewed", "2026-11-25")
    """The day on which somebody last read it through."""
    source: SourceField = needed("source", "common-practice")
    """Where it comes from, by its short name in sources.yaml."""
