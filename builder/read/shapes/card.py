"""The shape of an ingredient card, `ingredients/NAME.yaml`.

Decided: the assay of crystals with water is that of what is weighed (citric acid monohydrate 91 %). Why: then assay and water add up, and
more than the whole is a slip.
"""

from fractions import Fraction
from functools import partial
from typing import Annotated, Any, Self

from pydantic import model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.hazard import OF_INGREDIENTS, Hazard
from builder.model.label.declaration import Range, polytopes_of
from builder.model.place import Place
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.figure import Figures
from builder.model.recipe.ingredient import Charge, CountsAs, DeclaredAs, DropMass, Ingredient, LabelName, Microbe, MixesWith, Preserves
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.unread import UNREAD
from builder.read.lye.acid_shares import acid_share
from builder.read.makes import Makes, becomes
from builder.read.shapes.fields import NOT_EMPTY, AllergenFamilies, Text, Texts, Weight, WholeAboveZero, YesOrNo, looks_up, reads
from builder.read.shapes.figure import RELATIVE_DENSITY, Entries, entries_of, figures_of, in_use, judge_bounds
from builder.read.shapes.label_name import AllergenStatementShape, CertificateShape, LabelNameShape
from builder.read.shapes.library import CitationShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.values.bounds import DROP, SOLID_ALKALI
from builder.read.values.values import find_oil, member_of
from builder.words.fold import fold
from builder.words.plain_number import plain_number
from builder.words.within import Spelled, spelled

FINDS = (
    FindingKind("assay-and-water-over-whole", STOP, "The assay of a substance and its water come to more than the whole."),
    FindingKind("label-shares-impossible", STOP, "No blend fits the shares that are given for the label."),
)

_STATEMENT = "{covers: extended list, contains: {Linalool: 25 to 45 %}, source: our-supplier, at: statement of lot 12, known: supplier}"
_CERTIFICATE = "{at most: {leave-on: 2.5 %, rinse-off: 10 %}, source: our-supplier, at: certificate of lot 12, known: supplier}"


def _figure(name: str, value: str) -> Any:
    """Declare a figure, with the value and the unit of an example."""
    return maybe(name, (), f"[{{{value}, source: a-source, at: page 112, known: read}}]")


class FiguresShape(Shape):
    """The published values of each property."""

    saponification: Annotated[Entries, entries_of("saponification", "mg/g", both_ends=True)] = _figure(
        "saponification", "value: 190, unit: mg/g"
    )
    """Milligrams of potassium hydroxide that turn one gram of the fat into soap. The lye follows from it."""
    density: Annotated[Entries, entries_of("density", "g/mL", RELATIVE_DENSITY)] = _figure("density", "value: 0.92, unit: g/mL")
    """The weight of 1 mL. Volumes become weights through it."""
    bulk_density: Annotated[Entries, entries_of("bulk density", "g/mL")] = _figure("bulk density", "value: 0.5, unit: g/mL")
    """The weight of 1 mL of the loose powder, for spoons and cups."""
    molar_mass: Annotated[Entries, entries_of("molar mass", "g/mol")] = _figure("molar mass", "value: 39.997, unit: g/mol")
    """Grams for one mole; of an alkali, an acid or a base."""
    protons: Annotated[Entries, entries_of("protons", "count")] = _figure("protons", "value: 3, unit: count")
    """How many molecules of hydroxide one molecule of an acid takes up."""
    purity: Annotated[Entries, entries_of("purity", "%")] = _figure("purity", 'value: 98, unit: "%"')
    """The share of the substance itself in what is weighed. Of an acid it is needed wherever the acid takes up lye or counts towards a
    limit."""
    water_content: Annotated[Entries, entries_of("water content", "%")] = _figure("water content", 'value: 87, unit: "%"')
    """The share of water in it."""
    melting_point: Annotated[Entries, entries_of("melting point", "degC")] = _figure("melting point", "low: 62, high: 65, unit: degC")
    """Where it melts. A phase with it has to be hotter."""
    flash_point: Annotated[Entries, entries_of("flash point", "degC")] = _figure("flash point", "value: 76, unit: degC")
    """Where its vapour can be lit."""
    required_hlb: Annotated[Entries, entries_of("required HLB", "HLB")] = _figure("required HLB", "value: 7, unit: HLB")
    """The HLB that an oil asks of its emulsifier in an oil-in-water emulsion."""
    hlb: Annotated[Entries, entries_of("HLB", "HLB")] = _figure("HLB", "value: 15, unit: HLB")
    """The HLB that an emulsifier has."""
    acid_value: Annotated[Entries, entries_of("acid value", "mg/g", both_ends=True)] = _figure(
        "acid value", "low: 17, high: 24, unit: mg/g"
    )
    """Milligrams of potassium hydroxide that the free acids of one gram take up (beeswax with borax)."""
    neutralises: Annotated[Entries, entries_of("neutralises", "mg/g")] = _figure("neutralises", "value: 294, unit: mg/g")
    """Milligrams of potassium hydroxide for which one gram of it counts (borax)."""
    takes_up_water: Annotated[Entries, entries_of("takes up water", "%")] = _figure("takes up water", 'value: 200, unit: "%"')
    """How much water it holds by itself, as a percentage of its own weight (wool fat)."""
    share_of_oils: Annotated[Entries, entries_of("share of oils", "%")] = _figure("share of oils", 'value: 25, unit: "%"')
    """How much of it an emulsion usually needs, as a percentage of the oils."""
    ph_window: Annotated[Entries, entries_of("pH window", "pH", both_ends=True)] = _figure("pH window", "low: 3, high: 8, unit: pH")
    """The pH from which to which a preservative works."""
    ph_in_water: Annotated[Entries, entries_of("pH in water", "pH", both_ends=True)] = _figure("pH in water", "low: 9, high: 9.5, unit: pH")
    """The pH that it has dissolved in water."""
    usual_amount: Annotated[Entries, entries_of("usual amount", "%", both_ends=True)] = _figure(
        "usual amount", 'low: 0.5, high: 1, unit: "%"'
    )
    """How much of it is usual, as a percentage of the product."""
    add_below: Annotated[Entries, entries_of("add below", "degC")] = _figure("add below", "value: 45, unit: degC")
    """The temperature below which it goes in, since heat harms it or drives it off."""
    polyunsaturated: Annotated[Entries, entries_of("polyunsaturated", "%", both_ends=True)] = _figure(
        "polyunsaturated", 'low: 8, high: 12, unit: "%"'
    )
    """The share of polyunsaturated fatty acids. Where it is high, or not known, oils want an antioxidant if they are to keep."""
    heat_at_most: Annotated[Entries, entries_of("heat at most", "degC")] = _figure("heat at most", "value: 80, unit: degC")
    """The most heat that it bears."""
    heat_of_fusion: Annotated[Entries, entries_of("heat of fusion", "J/g")] = _figure("heat of fusion", "value: 180, unit: J/g")
    """The heat that one gram takes to melt, in joules."""
    in_soap: Annotated[Entries, entries_of("in soap", "%")] = _figure("in soap", 'low: 1, high: 3, unit: "%"')
    """The most that a soap usually bears, as a percentage of the oils."""
    takes_oil: Annotated[Entries, entries_of("takes oil", "%")] = _figure("takes oil", 'value: 3, unit: "%"')
    """How much oil a ready-made base takes up, as a percentage of the base."""
    takes_liquid: Annotated[Entries, entries_of("takes liquid", "%")] = _figure("takes liquid", 'value: 3, unit: "%"')
    """How much watery liquid a ready-made base takes up, as a percentage of the base."""
    takes_powder: Annotated[Entries, entries_of("takes powder", "%")] = _figure("takes powder", 'value: 2, unit: "%"')
    """How much powder a ready-made base takes up, as a percentage of the base."""
    aluminium: Annotated[Entries, entries_of("aluminium", "%")] = _figure("aluminium", 'value: 20, unit: "%"')
    """The share of aluminium in it, for limits on all aluminium."""


class ColourNameShape(Shape):
    """The names under which a colourant is declared."""

    us: Text | None = maybe("us", example="Ultramarines")
    """The name on the list of the United States."""
    eu: Text | None = maybe("eu", example="CI 77007")
    """The colour index number or name on the list of the European Union."""


class DropMassShape(Shape, Makes[DropMass]):
    """The mass of some drops, measured by the studio."""

    drops: WholeAboveZero = needed("drops", "50")
    """How many drops you counted; 50 is a good number."""
    weigh: Weight = needed("weigh", "1.9 g")
    """What they weighed together."""
    measured: Text = needed("measured", '"how and when"')
    """How and when you weighed them."""

    @model_validator(mode="after")
    def _is_a_drop(self) -> Self:
        if not DROP.hold((self.weigh / self.drops).grams):
            least, most = (plain_number(Fraction(end) * self.drops) for end in (DROP.least, DROP.most))
            wrong = f"No drop is so heavy or so light: {DROP.reason}. The most that students may count would be as wrong."
            remedy = f"Count and weigh anew: {self.drops} drops weigh from {least} to {most} g."
            raise TextError("figure-out-of-range", wrong, remedy, ("weigh",))
        return self


class PreservesShape(CitationShape, Makes[Preserves]):
    """What a preservative holds back, whether it does so alone, and what makes it fail."""

    covers: Annotated[tuple[Annotated[Microbe, reads(member_of(Microbe))], ...], NOT_EMPTY] = needed("covers", "[bacteria, fungi]")
    """What it holds back at its usual amount; fungi are yeast and mould."""
    alone: YesOrNo = needed("alone", "yes")
    """Whether it is a whole preservative, and not only a part of a system."""
    fails_with: tuple[Annotated[Charge, reads(member_of(Charge))], ...] = maybe("fails with", (), "[cationic]")
    """The charge of ingredients beside which it does not work."""


class CardShape(Shape, Makes[Ingredient]):
    """One ingredient card."""

    stands_at = "name"

    name: Text = needed("name", "Olive oil")
    """The name of the ingredient."""
    in_a_sentence: Text = maybe("in a sentence", "", "Epsom salt")
    """How the name stands inside a sentence, where it has a capital there. Else the plain name of its label decides, or a small letter."""
    also_called: Texts = maybe("also called", (), "[olive fruit oil]")
    """Other names by which recipes may call it."""
    label_name: LabelNameShape | None = maybe("label name", example="{inci: Olea Europaea Fruit Oil, plain: olive oil, known: memory}")
    """How labels declare it. Without it, what it is in has no label."""
    colour_name: ColourNameShape | None = maybe("colour name", example="{us: Ultramarines, eu: CI 77007}")
    """Its names on the official lists of colours, where they are not those of the label."""
    colour_certificate: Text = maybe("colour certificate", "", "lot 12 of the certified batch")
    """The lot of a colour that the law of the United States wants certified batch by batch."""
    also_works_as: Text = maybe("also works as", "", "a powder that protects the skin")
    """What a colourant can be there for instead, in words."""
    acid_frees: Text = maybe("acid frees", "", "hydrogen sulfide, which smells of bad eggs")
    """What an acid sets free from it, in words."""
    kind: Annotated[IngredientKind, reads(member_of(IngredientKind))] = needed("kind", "oil")
    """The kind of ingredient, which groups the shopping list and says what is looked at."""
    counts_as: Annotated[CountsAs, reads(member_of(CountsAs))] = needed("counts as", "fat")
    """What it is in the sums: whether lye takes it, and how."""
    mixes_with: Annotated[MixesWith, reads(member_of(MixesWith))] = needed("mixes with", "oil")
    """Whether it mixes with oil, with water, with both or with neither."""
    declared_as: Annotated[DeclaredAs, reads(member_of(DeclaredAs))] = maybe("declared as", DeclaredAs.INGREDIENT, example="fragrance")
    """Where the label puts it: among the ingredients, as a colour, as scent or as flavour."""
    saponified_as: Text = maybe("saponified as", "", "Olivate")
    """The second word of the name of its soap: Sodium Olivate. Needed where a label lists the soap as it came out."""
    allergen_statement: AllergenStatementShape | None = maybe("allergen statement", example=_STATEMENT)
    """The supplier's statement of the fragrance allergens in a scent, or in a base with scent. Without it, in the European Union, the
    United Kingdom and Canada what the scent is in has no label."""
    oil: Annotated[str, looks_up(find_oil)] = maybe("oil", "", "lavender")
    """Which oil of the table of essential oils it is, by the name in that table. Without it, all oils of its INCI name count, with the
    widest span."""
    certificate: CertificateShape | None = maybe("certificate", example=_CERTIFICATE)
    """The supplier's certificate of a scent. It comes before what is published of the oil."""
    hazards: tuple[Annotated[Hazard, reads(member_of(Hazard, OF_INGREDIENTS))], ...] = maybe("hazards", (), "[dust]")
    """What can hurt in it; cautions, gear and supervision follow from it."""
    allergens: AllergenFamilies = maybe("allergens", (), "[tree nut]")
    """The families of allergens that it belongs to."""
    charge: Annotated[Charge, reads(member_of(Charge))] | None = maybe("charge", example="anionic")
    """The charge that it has in water. Opposite charges bind each other."""
    like_food: YesOrNo = maybe("like food", False, example="yes")
    """Whether it makes a product look or smell like food."""
    too_rough_for: tuple[Annotated[BodyPart, reads(member_of(BodyPart))], ...] = maybe("too rough for", (), "[face]")
    """The parts of the body that its grains scratch."""
    speeds_trace: YesOrNo = maybe("speeds trace", False, example="yes")
    """Whether it makes raw soap thicken within moments."""
    preserves: PreservesShape | None = maybe(
        "preserves", example="{covers: [bacteria, fungi], alone: yes, source: a-source, at: page 112, known: read}"
    )
    """What a preservative works against. Without it, it counts as none."""
    about: Text = maybe("about", "", example="A base oil of mild bars.")
    """A sentence or two for whoever reads the card."""
    figures: FiguresShape = maybe(
        "figures",
        FiguresShape.model_construct(),
        "{saponification: [{value: 190, unit: mg/g, source: a-source, at: page 112, known: read}]}",
    )
    """The published figures, each a list of one or more entries with their sources."""
    drop_mass: DropMassShape | None = maybe("drop mass", example='{drops: 50, weigh: 1.9 g, measured: "how and when"}')
    """The mass of its drops, as you weighed them. Until then drops are estimated on the safe side and printed as "about"."""

    @becomes("name")
    def _spelled(self, placed: PlacedData) -> Spelled:
        plain = placed.part(lambda: self.label_name.plain[0] if self.label_name else "")
        return Spelled(self.name, self.in_a_sentence) if self.in_a_sentence else spelled(self.name, plain)

    @becomes("label_name")
    def _on_labels(self, placed: PlacedData) -> LabelName | None:
        return self.label_name.make(placed.inside("label name"), shares=self.label_shares) if self.label_name else None

    @becomes("colour_name")
    def _on_lists(self, _: PlacedData) -> dict[str, str]:
        return {region: name for region, name in (self.colour_name or ()) if name}

    @becomes("figures")
    def _figures_by_name(self, placed: PlacedData) -> dict[str, Figures]:
        said = {str(info.alias): getattr(self.figures, field) for field, info in FiguresShape.model_fields.items()}
        return {
            name: placed.part(partial(figures_of, entries, placed.inside("figures", name)))
            for name, entries in said.items()
            if entries is UNREAD or entries
        }

    @becomes("name_places")
    def _places_of_names(self, placed: PlacedData) -> dict[str, Place]:
        others = {fold(name): placed.place("also called", number) for number, name in enumerate(self.also_called)}
        return others | {fold(self.name): placed.place("name")}

    @model_validator(mode="after")
    def _is_solid_alkali(self) -> Self:
        if self.counts_as is CountsAs.ALKALI:
            judge_bounds(self.figures.purity, "purity", SOLID_ALKALI, "figures", "purity")
        return self

    @model_validator(mode="after")
    def _is_no_more_than_the_whole(self) -> Self:
        purity, water = in_use(self.figures.purity), in_use(self.figures.water_content)
        if purity and water and purity.ends[0] + water.ends[0] > 100:
            least, of_water = plain_number(purity.ends[0]), plain_number(water.ends[0])
            wrong = f"{least} % of it and {of_water} % of water come to more than the whole."
            remedy = (
                "Look both up again: each is a share by weight of what is weighed, the assay too (not of what is left once it is dried)."
            )
            raise TextError("assay-and-water-over-whole", wrong, remedy, at=("figures", "water content"))
        return self

    @model_validator(mode="after")
    def _has_a_list_that_fits_its_strength(self) -> Self:
        name = self.label_name
        if name and not polytopes_of(len(name.inci), name.below, self.label_shares, sorted(name.numbers(name.colours))):
            wrong = "The names on the label go against the strength of this acid."
            remedy = "Name what there is more of first, and look the purity up again."
            raise TextError("label-shares-impossible", wrong, remedy, at=("label name", "inci"))
        return self

    @property
    def label_shares(self) -> dict[int, Range]:
        """Return what is known of the shares of the parts that the label names: as stated, or by the strength of an acid."""
        stated = self.label_name.shares if self.label_name else {}
        purity = in_use(self.figures.purity)
        if self.label_name is None or purity is None or self.counts_as is not CountsAs.ACID:
            return stated
        return stated or acid_share(self.label_name.inci, stated, purity.ends)
