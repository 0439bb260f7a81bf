"""The shape of an ingredient card, `ingredients/NAME.yaml`."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.declaration import Range, cells_of
from builder.model.recipe.ingredient import CHARGES, MICROBES, CountsAs, DeclaredAs
from builder.model.recipe.recipe import USED_ON
from builder.read.lye.acid_shares import acid_share
from builder.read.shapes.fields import NOT_EMPTY, AllergenFamilies, Text, Texts, Weight, WholeAboveZero, YesOrNo, looks_up, reads
from builder.read.shapes.figure import RELATIVE_DENSITY, Entries, entries_of, in_use, judge_bounds
from builder.read.shapes.label_name import AllergenStatementShape, CertificateShape, LabelNameShape
from builder.read.shapes.library import CitationShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.text_error import TextError
from builder.read.values.bounds import DROP, SOLID_ALKALI
from builder.read.values.values import find_oil, member_of, word_of
from builder.words.plain_number import plain_number

FINDS = (
    FindingKind("assay-and-water-over-whole", STOP, "The assay of a substance and its water come to more than the whole."),
    FindingKind("label-shares-impossible", STOP, "No blend fits the shares that are given for the label."),
)

_KINDS = (
    "oil", "butter", "wax", "fatty acid", "water", "milk", "liquid", "alkali", "acid", "salt", "sugar", "grain", "clay", "starch",
    "humectant", "emulsifier", "thickener", "preservative", "antioxidant", "surfactant", "soap base", "lotion base", "herb",
    "essential oil", "fragrance", "flavour", "colourant", "exfoliant", "other",
)  # fmt: skip
_HAZARDS = (
    "caustic", "irritant acid", "dust", "flammable", "neat essential oil", "neat preservative", "phototoxic", "slippery", "stains",
    "spoils", "harmful to pets", "sensitiser",
)  # fmt: skip
_STATEMENT = "{covers: extended list, contains: {Linalool: 25 to 45 %}, source: our-supplier, at: statement of lot 12, known: supplier}"
_CERTIFICATE = "{at most: {leave-on: 2.5 %, rinse-off: 10 %}, source: our-supplier, at: certificate of lot 12, known: supplier}"
_ENTRY = "[{value: 190, unit: mg/g, source: a-source, at: page 112, known: read}]"


class FiguresShape(Shape):
    """The published values of each property."""

    saponification: Annotated[Entries, entries_of("saponification", "mg/g", both_ends=True)] = maybe("saponification", (), _ENTRY)
    density: Annotated[Entries, entries_of("density", "g/mL", RELATIVE_DENSITY)] = maybe("density", (), _ENTRY)
    bulk_density: Annotated[Entries, entries_of("bulk density", "g/mL")] = maybe("bulk density", (), _ENTRY)
    molar_mass: Annotated[Entries, entries_of("molar mass", "g/mol")] = maybe("molar mass", (), _ENTRY)
    protons: Annotated[Entries, entries_of("protons", "count")] = maybe("protons", (), _ENTRY)
    purity: Annotated[Entries, entries_of("purity", "%")] = maybe("purity", (), _ENTRY)
    water_content: Annotated[Entries, entries_of("water content", "%")] = maybe("water content", (), _ENTRY)
    melting_point: Annotated[Entries, entries_of("melting point", "degC")] = maybe("melting point", (), _ENTRY)
    flash_point: Annotated[Entries, entries_of("flash point", "degC")] = maybe("flash point", (), _ENTRY)
    required_hlb: Annotated[Entries, entries_of("required HLB", "HLB")] = maybe("required HLB", (), _ENTRY)
    hlb: Annotated[Entries, entries_of("HLB", "HLB")] = maybe("HLB", (), _ENTRY)
    acid_value: Annotated[Entries, entries_of("acid value", "mg/g", both_ends=True)] = maybe("acid value", (), _ENTRY)
    neutralises: Annotated[Entries, entries_of("neutralises", "mg/g")] = maybe("neutralises", (), _ENTRY)
    takes_up_water: Annotated[Entries, entries_of("takes up water", "%")] = maybe("takes up water", (), _ENTRY)
    share_of_oils: Annotated[Entries, entries_of("share of oils", "%")] = maybe("share of oils", (), _ENTRY)
    ph_window: Annotated[Entries, entries_of("pH window", "pH", both_ends=True)] = maybe("pH window", (), _ENTRY)
    ph_in_water: Annotated[Entries, entries_of("pH in water", "pH", both_ends=True)] = maybe("pH in water", (), _ENTRY)
    usual_amount: Annotated[Entries, entries_of("usual amount", "%", both_ends=True)] = maybe("usual amount", (), _ENTRY)
    add_below: Annotated[Entries, entries_of("add below", "degC")] = maybe("add below", (), _ENTRY)
    polyunsaturated: Annotated[Entries, entries_of("polyunsaturated", "%", both_ends=True)] = maybe("polyunsaturated", (), _ENTRY)
    heat_at_most: Annotated[Entries, entries_of("heat at most", "degC")] = maybe("heat at most", (), _ENTRY)
    heat_of_fusion: Annotated[Entries, entries_of("heat of fusion", "J/g")] = maybe("heat of fusion", (), _ENTRY)
    in_soap: Annotated[Entries, entries_of("in soap", "%")] = maybe("in soap", (), _ENTRY)
    takes_oil: Annotated[Entries, entries_of("takes oil", "%")] = maybe("takes oil", (), _ENTRY)
    takes_liquid: Annotated[Entries, entries_of("takes liquid", "%")] = maybe("takes liquid", (), _ENTRY)
    takes_powder: Annotated[Entries, entries_of("takes powder", "%")] = maybe("takes powder", (), _ENTRY)
    aluminium: Annotated[Entries, entries_of("aluminium", "%")] = maybe("aluminium", (), _ENTRY)


class ColourNameShape(Shape):
    """The names under which a colourant is declared."""

    us: Text | None = maybe("us")
    eu: Text | None = maybe("eu")


class DropMassShape(Shape):
    """The mass of some drops, measured by the studio."""

    drops: WholeAboveZero = needed("drops", "50")
    weigh: Weight = needed("weigh", "1.9 g")
    measured: Text = needed("measured", '"how and when"')

    @model_validator(mode="after")
    def _is_a_drop(self) -> Self:
        if not DROP.hold((self.weigh / self.drops).grams):
            least, most = (plain_number(Fraction(end) * self.drops) for end in (DROP.least, DROP.most))
            wrong = f"No drop is so heavy or so light: {DROP.reason}. The most that students may count would be as wrong."
            remedy = f"Count and weigh anew: {self.drops} drops weigh from {least} to {most} g."
            raise TextError("figure-out-of-range", wrong, remedy, ("weigh",))
        return self


class PreservesShape(CitationShape):
    """What a preservative holds back, whether it does so alone, and what makes it fail."""

    covers: Annotated[tuple[Annotated[str, reads(word_of(*MICROBES))], ...], NOT_EMPTY] = needed("covers", "[bacteria, fungi]")
    alone: YesOrNo = needed("alone", "yes")
    fails_with: tuple[Annotated[str, reads(word_of(*CHARGES))], ...] = maybe("fails with", (), "[cationic]")


class CardShape(Shape):
    """One ingredient card."""

    name: Text = needed("name", "Olive oil")
    also_called: Texts = maybe("also called", (), "[olive fruit oil]")
    label_name: LabelNameShape | None = maybe("label name", example="{inci: Olea Europaea Fruit Oil, plain: olive oil, known: memory}")
    colour_name: ColourNameShape | None = maybe("colour name", example="{us: Ultramarines, eu: CI 77007}")
    colour_certificate: Text = maybe("colour certificate", "", "lot 12 of the certified batch")
    also_works_as: Text = maybe("also works as", "", "a powder that protects the skin")
    acid_frees: Text = maybe("acid frees", "", "hydrogen sulfide, which smells of bad eggs")
    kind: Annotated[str, reads(word_of(*_KINDS))] = needed("kind", "oil")
    counts_as: Annotated[CountsAs, reads(member_of(CountsAs))] = needed("counts as", "fat")
    mixes_with: Annotated[str, reads(word_of("oil", "water", "both", "neither"))] = needed("mixes with", "oil")
    declared_as: Annotated[DeclaredAs, reads(member_of(DeclaredAs))] = maybe("declared as", DeclaredAs.INGREDIENT)
    saponified_as: Text = maybe("saponified as", "", "Olivate")
    allergen_statement: AllergenStatementShape | None = maybe("allergen statement", example=_STATEMENT)
    oil: Annotated[str, looks_up(find_oil)] = maybe("oil", "", "lavender")
    certificate: CertificateShape | None = maybe("certificate", example=_CERTIFICATE)
    hazards: tuple[Annotated[str, reads(word_of(*_HAZARDS))], ...] = maybe("hazards", (), "[dust]")
    allergens: AllergenFamilies = maybe("allergens", (), "[tree nut]")
    charge: Annotated[str, reads(word_of(*CHARGES))] = maybe("charge", "")
    like_food: YesOrNo = maybe("like food", False)
    too_rough_for: tuple[Annotated[str, reads(word_of(*USED_ON))], ...] = maybe("too rough for", (), "[face]")
    speeds_trace: YesOrNo = maybe("speeds trace", False)
    preserves: PreservesShape | None = maybe(
        "preserves", example="{covers: [bacteria, fungi], alone: yes, source: a-source, at: page 112, known: read}"
    )
    about: Text = maybe("about", "")
    figures: FiguresShape = maybe("figures", FiguresShape.model_construct(), f"{{saponification: {_ENTRY}}}")
    drop_mass: DropMassShape | None = maybe("drop mass", example='{drops: 50, weigh: 1.9 g, measured: "how and when"}')

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
        if name and not cells_of(len(name.inci), name.first_below, self.label_shares, sorted(name.numbers(name.colours))):
            wrong = "The names on the label go against the strength of this acid."
            remedy = "Name what there is more of first, and look the purity up again."
            raise TextError("label-shares-impossible", wrong, remedy, at=("label name", "inci"))
        return self

    @property
    def label_shares(self) -> dict[int, Range]:
        """Give what is known of the shares of the parts that the label names: as stated, or by the strength of an acid."""
        stated = self.label_name.ranges if self.label_name else {}
        purity = in_use(self.figures.purity)
        if self.label_name is None or purity is None or self.counts_as is not CountsAs.ACID:
            return stated
        return stated or acid_share(self.label_name.inci, stated, purity.ends)
