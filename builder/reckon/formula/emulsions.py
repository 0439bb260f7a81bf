"""Water and oil that meet in a batch, and all that can hold them together.

Non-ionic emulsifiers are judged by their HLB (`hlb.py`). Wool fat and its like take up a multiple of their weight of water. And the free
acids of beeswax or stearic acid become a soap where borax or another mild alkali neutralises them: n(acid) = m * acid value / M(KOH), and
an alkali is given in the same unit, so that the share of the acids that is neutralised is the quotient of the two.
"""

from collections.abc import Callable, Sequence
from fractions import Fraction

from builder.model.formula.emulsion import CreamSoap, Emulsion
from builder.model.recipe.column import Line
from builder.model.recipe.figure import Figure, Known
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.working import Given, SumRule, Working
from builder.reckon.formula.hlb import mixture_of, share_of_high
from builder.words.say import message

REQUIRED, HAS = message("required HLB"), message("HLB")
_NOTHING = Fraction(0)
_POWDERS = (
    IngredientKind.SALT,
    IngredientKind.SUGAR,
    IngredientKind.CLAY,
    IngredientKind.STARCH,
    IngredientKind.GRAIN,
    IngredientKind.EXFOLIANT,
    IngredientKind.HERB,
)


def reckon_emulsion(lines: Sequence[Line]) -> Emulsion | None:
    """Work out the emulsion of a batch; None where water and oil do not meet, where the batch is soap or rests on a ready-made base, and in
    a paste: powder of at least the weight of the water takes that up."""
    water, powder = _share(lines, _is_water), _share(lines, _is_powder)
    oils = [line for line in lines if _is_of_oil_phase(line)]
    other = any(line.ingredient.counts_as in (CountsAs.ALKALI, CountsAs.BASE) for line in lines)
    if not water or other or powder >= water or not any(_is_fat(line) for line in oils):
        return None
    emulsifiers = [line for line in lines if line.ingredient.kind is IngredientKind.EMULSIFIER]
    pair = sorted(emulsifiers, key=lambda line: _hlb(line) or _NOTHING, reverse=True)
    required = mixture_of([(line.share, line.ingredient.figure(REQUIRED)) for line in oils])
    has = mixture_of([(line.share, line.ingredient.figure(HAS)) for line in emulsifiers])
    blend = None
    if len(pair) == 2 and required is not None and has is not None:
        blend = share_of_high(required, _hlb(pair[0]) or _NOTHING, _hlb(pair[1]) or _NOTHING)
    takers = [(line, figure) for line in lines if (figure := line.ingredient.figure("takes up water"))]
    return Emulsion(
        oils=tuple(line.ingredient for line in oils),
        emulsifiers=tuple(line.ingredient for line in pair),
        oil_share=sum((line.share for line in oils), _NOTHING),
        required=required,
        has=has,
        share_of_first=blend,
        water_share=water,
        takers=tuple(line.ingredient for line, _ in takers),
        takes_up=sum((line.share * figure.low / 100 for line, figure in takers), _NOTHING),
        soap=_soap_of(lines),
        workings=(*_working(REQUIRED, oils, required), *_working(HAS, emulsifiers, has)),
    )


def _soap_of(lines: Sequence[Line]) -> CreamSoap | None:
    """Return the soap that an alkali which is no lye makes of free acids; None where one of the two is missing."""
    acids = [(line, figure) for line in lines if (figure := _free_acid(line))]
    alkalis = [(line, figure) for line in lines if (figure := line.ingredient.figure("neutralises"))]
    if not acids or not alkalis:
        return None
    least, most = (sum((line.share * end(figure) for line, figure in acids), _NOTHING) for end in (_low, _high))
    alkali = [sum((line.share * end(figure) for line, figure in alkalis), _NOTHING) for end in (_low, _high)]
    return CreamSoap(
        acids=tuple(line.ingredient for line, _ in acids),
        alkalis=tuple(line.ingredient for line, _ in alkalis),
        low=alkali[0] / most,
        high=alkali[1] / least,
    )


def _free_acid(line: Line) -> Figure | None:
    """Return the free acid of a line as mg of KOH to the g: of a fatty acid all that it takes, of a wax its acid value."""
    card = line.ingredient
    return card.figure("saponification" if card.counts_as is CountsAs.FATTY_ACID else "acid value")


def _low(figure: Figure) -> Fraction:
    return figure.low


def _high(figure: Figure) -> Fraction:
    return figure.highest


def _share(lines: Sequence[Line], is_such: Callable[[Line], bool]) -> Fraction:
    return sum((line.share for line in lines if is_such(line)), _NOTHING)


def _is_water(line: Line) -> bool:
    return line.ingredient.counts_as.is_watery


def _is_powder(line: Line) -> bool:
    return line.ingredient.kind in _POWDERS


def _is_fat(line: Line) -> bool:
    return line.ingredient.is_oily


def _is_of_oil_phase(line: Line) -> bool:
    """Tell whether a line is of the oil phase: fats, waxes, fatty acids, and the fatty alcohols of which a required HLB is known."""
    return _is_fat(line) or (line.ingredient.kind is not IngredientKind.EMULSIFIER and line.ingredient.figure(REQUIRED) is not None)


def _hlb(line: Line) -> Fraction | None:
    figure = line.ingredient.figure(HAS)
    return figure.typical if figure else None


def _working(name: str, lines: Sequence[Line], result: Fraction | None) -> tuple[Working, ...]:
    if result is None:
        return ()
    whole = sum((line.share for line in lines), Fraction(0))
    given: list[Given] = []
    for line, figure in ((line, figure) for line in lines if (figure := line.ingredient.figure(name))):
        given.append(Given("share", line.share / whole, "of 1", of=line.ingredient.name))
        source, is_remembered = f"{figure.source.title}, {figure.at}", figure.known is Known.MEMORY
        given.append(Given(name, figure.typical, "", source, from_memory=is_remembered))
    of = message("the oil phase") if name == REQUIRED else message("the emulsifiers")
    rule = SumRule.REQUIRED_HLB_OF_A_MIXTURE if name == REQUIRED else SumRule.HLB_OF_A_MIXTURE
    return (Working(rule, of, tuple(given), result, ""),)
