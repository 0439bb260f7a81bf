"""The bounds beyond which a figure is a slip of the pen: nothing that a studio uses lies there.

They are wide on purpose. Within them a figure may still be wrong; only its source can tell. The reasons are common practice, no source.

Decided: figures on cards have bounds, in one table with the reasons (`read/values/bounds.py`). Why: a slip of the decimal point makes lye
of soap; the bounds are wide, and no substance that a studio uses passes them.
"""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.quantity import Number
from builder.words.plain_number import plain_number


@dataclass(frozen=True)
class Bounds:
    """The least (`above`: itself outside) and the most that a figure can be, and the reason.

    `slip` is the factor by which such a figure is easily wrong, and `looks` what it looks like then; with `or_slip` and `or_looks` it may
    as well be something else, and only whoever wrote it can tell. `instead` says what else may be meant.
    """

    least: Number
    most: Number
    unit: str
    reason: str
    above: bool = False
    whole: bool = False
    slip: Number | None = None
    looks: str = ""
    or_slip: Number | None = None
    or_looks: str = ""
    instead: str = ""

    def hold(self, number: Fraction) -> bool:
        """Tell whether a number lies within."""
        enough = number > self.least if self.above else number >= self.least
        return enough and number <= self.most and (not self.whole or number.denominator == 1)

    def remedy(self, number: Fraction) -> str:
        """Return in words what to write in place of a number that lies outside: what was meant, where that can be told."""
        meant = number * self.slip if self.slip else None
        other = number * self.or_slip if self.or_slip else None
        if meant is not None and other is not None and (self.hold(meant) or self.hold(other)):
            return (
                f"Which of the two is it? If {self.looks}, {self._as_meant(meant)}; if {self.or_looks}, {self._as_meant(other)}. The "
                "certificate says which."
            )
        if meant is not None and self.hold(meant):
            return f'This looks like {self.looks}: probably "{plain_number(meant)} {self.unit}" is meant.'
        kind, beginning = "a whole number" if self.whole else "a figure", "above" if self.above else "from"
        least, most = plain_number(Fraction(self.least)), plain_number(Fraction(self.most))
        wanted = f"Write {kind} {beginning} {least} to {most} {self.unit}".rstrip()
        return f"{wanted}. {self.instead}".rstrip()

    def _as_meant(self, number: Fraction) -> str:
        return f'write "{plain_number(number, 4)} {self.unit}"' if self.hold(number) else "it cannot be right"


# Molar masses of potassium and of sodium hydroxide: what is stated in the one is so many times as much in the other.
_POTASSIUM_FOR_SODIUM = Fraction("56.1056") / Fraction("39.997")
_ASSAY = "nothing is less than none, and an assay passes the whole only by its own error"
_KG_IN_CUBIC_METRE = "kg for each cubic metre"

FIGURES = {
    "saponification": Bounds(
        20, 400, "mg/g", "waxes take some 40 mg for each g, and caprylic acid, the lightest fatty acid of a soap, takes 389 mg",
        slip=1000, looks="it is g of potassium hydroxide for each g of fat",
        or_slip=1000 * _POTASSIUM_FOR_SODIUM, or_looks="it is g of sodium hydroxide for each g of fat",
    ),
    "density": Bounds(
        Fraction("0.5"), Fraction("2.5"), "g/mL", "oils lie a little below 1, syrups below 1.5; what is heavier is a crystal, no spoonful",
        slip=Fraction(1, 1000), looks=_KG_IN_CUBIC_METRE,
    ),
    "bulk density": Bounds(
        Fraction("0.05"), Fraction("2.5"), "g/mL", "dried petals are the lightest thing that is spooned, and minerals the heaviest",
        slip=Fraction(1, 1000), looks=_KG_IN_CUBIC_METRE,
    ),
    "molar mass": Bounds(
        10, 1000, "g/mol", "the alkalis and acids that go into a soap lie between 40 and a few hundred",
        slip=1000, looks="kg for each mol",
    ),
    "protons": Bounds(1, 6, "", "an acid of a studio gives one, two or three", whole=True),
    "purity": Bounds(0, 101, "%", _ASSAY, above=True),
    "water content": Bounds(0, 101, "%", _ASSAY, above=True),
    "melting point": Bounds(-100, 500, "degC", "whatever melts beyond that is no ingredient"),
    "flash point": Bounds(-100, 500, "degC", "whatever flashes beyond that is no ingredient"),
    "required HLB": Bounds(1, 20, "HLB", "the scale of Griffin runs from 0 to 20, and no oil needs its ends"),
    "HLB": Bounds(0, 20, "HLB", "the scale of Griffin for non-ionic emulsifiers runs from 0 to 20; an ionic one has no place on it"),
    "acid value": Bounds(0, 400, "mg/g", "no free acid of a studio takes more potassium hydroxide than caprylic acid", above=True),
    "neutralises": Bounds(1, 3000, "mg/g", "magnesia, the lightest alkali of a studio, stands for 2784 mg of potassium hydroxide to the g"),
    "takes up water": Bounds(0, 5000, "%", "it is a percentage of its own weight", above=True),
    "share of oils": Bounds(0, 100, "%", "more emulsifier than oil is no emulsion", above=True),
    "pH window": Bounds(0, 14, "pH", "the scale runs from 0 to 14"),
    "pH in water": Bounds(0, 14, "pH", "the scale runs from 0 to 14"),
    "usual amount": Bounds(0, 100, "%", "it is a share of the finished product", above=True),
    "add below": Bounds(0, 200, "degC", "no kitchen pot gets hotter"),
    "polyunsaturated": Bounds(0, 100, "%", "it is a share of the fatty acids"),
    "heat at most": Bounds(0, 200, "degC", "no kitchen pot gets hotter"),
    "heat of fusion": Bounds(
        10, 400, "J/g", "ice takes 334 J to melt a gram, and no fat or wax takes as much",
        slip=Fraction(1, 1000), looks="J for each kg",
    ),
    "in soap": Bounds(0, 100, "%", "it is a percentage of the oils", above=True),
    "takes oil": Bounds(0, 100, "%", "it is a percentage of the base", above=True),
    "takes liquid": Bounds(0, 100, "%", "it is a percentage of the base", above=True),
    "takes powder": Bounds(0, 100, "%", "it is a percentage of the base", above=True),
    "aluminium": Bounds(0, 100, "%", "it is the share of the element in the ingredient"),
}  # fmt: skip
SOLID_ALKALI = Bounds(
    50, 101, "%", "an alkali as bought is a solid of at least 50 %, and what is weaker is a solution of it",
    slip=100, looks="a part of one", instead='A lye that is bought as a solution is written in the recipe, as in "ready-mixed: 33 %".',
)  # fmt: skip
PACK = Bounds(
    Fraction("0.1"), 1_000_000, "g or mL", "what a studio buys lies between a pinch of dye and a tonne",
)  # fmt: skip
IN_STOCK = Bounds(0, 1_000_000, "g, mL or pieces", "a shelf holds a tonne at most, or a million pieces")
PACK_DENSITY = FIGURES["bulk density"]
STROKE = Bounds(
    Fraction("0.1"), 100, "g or mL", "a treatment pump gives a tenth of a millilitre, and the largest pump of a gallon jug some 30 mL",
)  # fmt: skip
PRODUCT_DENSITY = Bounds(
    Fraction("0.2"), 2, "g/mL", "a whipped butter is the lightest thing that is filled, and a paste of salt stays below 1.7",
    slip=Fraction(1, 1000), looks=_KG_IN_CUBIC_METRE,
)  # fmt: skip
DROP = Bounds(
    Fraction("0.01"), Fraction("0.15"), "g", "water falls in drops of 0.05 g from a pharmacopoeial dropper, scents in lighter ones",
)  # fmt: skip
HEAT = Bounds(
    0, 200, "degC", "below 0 degC nothing is heated, and above 200 degC fats smoke and catch fire",
    instead='Degrees Fahrenheit are written "160 degF".',
)  # fmt: skip
