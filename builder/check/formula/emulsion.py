"""Water and oil together: whether something holds them, whether it is enough, and whether it suits the oils.

The HLB is a starting point for non-ionic emulsifiers and no law:
only what is far off is said, and nothing where a figure is not known.

Decided: the HLB is judged only where every figure is known and every emulsifier is without charge, and only what is far off is said. Why:
a guess for one oil would make a figure of nothing; tables differ by 1 and more.

Decided: emulsifiers whose HLB is that of water in oil are judged by how much water there is, others by what the oils require. Why: the
figures that oils require are known for oil in water alone.

Decided: powder of at least the weight of the water makes a paste, and no emulsion. Why: a clay mask and a bath bomb do not part.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.figure_words import DEFER, inside, range_of
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.formula.emulsion import CreamSoap, Emulsion
from builder.model.place import Place
from builder.model.recipe.ingredient import Charge, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.rules.basis import PRACTICE, basis_of
from builder.words.listed import listed_once
from builder.words.percent import percent
from builder.words.plain_number import plain_number

FAR_OFF = "HLB that is far off"
WATER_IN_OIL = "HLB of a water-in-oil emulsifier"
MOST_WATER = "most water in a water-in-oil emulsion"
NEUTRALISED = "free acids that are neutralised in a cream"
_HOLDS = (IngredientKind.EMULSIFIER, IngredientKind.SURFACTANT, IngredientKind.SOAP_BASE)
_METHOD = "the share of each oil in the oil phase times its required HLB, after Griffin; tables seldom agree closer than 1"
_PROVE = "An emulsion is proved by standing: keep a sample for a week, one warm and one cold, before a class makes it."


@rule_on(
    BATCH,
    FindingKind("emulsifier-missing", CAUTION, "Water and oil are in one product, and nothing holds them together."),
    FindingKind("emulsifier-too-little", CAUTION, "There is less emulsifier than the oils usually need."),
    FindingKind("alkali-left-over", CAUTION, "More borax or other alkali is in a cream than the free acids of its wax take up."),
    FindingKind("hlb-far-off", CAUTION, "The emulsifiers do not suit the oils, so that the emulsion often parts."),
)
def find_weak_emulsions(batch: Batch) -> Iterator[BatchFinding]:
    """Look at each batch in which water and oil meet."""
    emulsion = batch.worked.emulsion
    if emulsion is None:
        return
    yield from _too_little(batch, emulsion)
    yield from _far_off(batch, emulsion)
    if emulsion.soap:
        yield from _cream_soap(batch, emulsion, emulsion.soap)
    elif not _is_held(batch) and emulsion.takes_up < emulsion.water_share:
        yield _takes_up_too_little(batch, emulsion) if emulsion.takers else _missing(batch, emulsion)


def _is_held(batch: Batch) -> bool:
    return any(line.ingredient.kind in _HOLDS for line in batch.worked.lines)


def _place_of(card: Ingredient, batch: Batch) -> Place:
    return next(line.place for line in batch.worked.lines if line.ingredient is card)


def _missing(batch: Batch, emulsion: Emulsion) -> BatchFinding:
    waxes = [card for card in emulsion.oils if card.figure("acid value")]
    wax = f" {waxes[0].name} by itself holds no water: only with an alkali such as borax does it make a cream." if waxes else ""
    return batch.caution(
        "emulsifier-missing",
        _place_of(emulsion.oils[0], batch),
        f"it holds water and {inside(emulsion.oils[0])}, and no emulsifier: the two part within minutes, and the preservative with them, "
        f"so that one portion gets too much of it and the next none ({PRACTICE}).{wax}",
        f"Add an emulsifier (an emulsifying wax of about a quarter of the oils, say), or label it “Shake before use”. {_PROVE}",
        "",
    )


def _takes_up_too_little(batch: Batch, emulsion: Emulsion) -> BatchFinding:
    first = emulsion.takers[0]
    figure = first.figure("takes up water")
    basis = f" ({basis_of(figure)})" if figure else ""
    return batch.caution(
        "emulsifier-too-little",
        _place_of(first, batch),
        f"{listed_once([card.name for card in emulsion.takers])} can take up {percent(emulsion.takes_up)} of the whole in water{basis}, "
        f"and there is {percent(emulsion.water_share)}, with nothing else that holds it: the rest runs out.",
        f"Use less water, more of what takes it up, or an emulsifier. {_PROVE} {DEFER}",
        "",
    )


def _cream_soap(batch: Batch, emulsion: Emulsion, soap: CreamSoap) -> Iterator[BatchFinding]:
    """Compare what the alkali neutralises with what makes a cream, and look for some that is left over."""
    usual = batch.constants[NEUTRALISED]
    alkali, acids = listed_once([card.name for card in soap.alkalis]), listed_once([inside(card) for card in soap.acids])
    place = _place_of(soap.alkalis[0], batch)
    neutralises = f"{alkali} neutralises from {percent(soap.low)} to {percent(soap.high)} of the free acids of {acids}"
    if soap.high * 100 < usual.low and not _is_held(batch) and emulsion.takes_up < emulsion.water_share:
        yield batch.caution(
            "emulsifier-too-little",
            place,
            f"{neutralises}, and {range_of(usual, '%')} is usual ({basis_of(usual)}). The soap that the two make is what holds water and "
            "oil together here, and there is little of it.",
            f"Use more of the one or the other, or less water. {_PROVE} {DEFER}",
            "",
        )
    elif soap.low * 100 > usual.highest:
        yield batch.caution(
            "alkali-left-over",
            place,
            f"{neutralises}: more than they take, whatever the wax. What is left over makes the cream more alkaline and dries to sharp "
            f"crystals ({PRACTICE}).",
            f"Use at most {percent(_share_of(soap.alkalis, batch) / soap.low)} of the whole. {DEFER}",
            "",
        )


def _share_of(cards: tuple[Ingredient, ...], batch: Batch) -> Fraction:
    return sum((line.share for line in batch.worked.lines if line.ingredient in cards), Fraction(0))


def _too_little(batch: Batch, emulsion: Emulsion) -> Iterator[BatchFinding]:
    needs = [(line, figure) for line in batch.worked.lines if (figure := line.ingredient.figure("share of oils"))]
    if len(needs) != 1 or len(emulsion.emulsifiers) != 1 or emulsion.soap or emulsion.takes_up >= emulsion.water_share:
        return
    line, usual = needs[0]
    share = line.share / emulsion.oil_share
    if share * 100 < usual.low:
        yield batch.caution(
            "emulsifier-too-little",
            line.place,
            f"{line.ingredient.name} comes to {percent(share)} of the oils, and {range_of(usual, '%')} is usual ({basis_of(usual)}): with "
            "less, the oil parts from the water on the shelf.",
            f"Raise it to about {percent(usual.low * emulsion.oil_share / 100)} of the whole, or take less oil. {_PROVE} {DEFER}",
            "",
        )


def _far_off(batch: Batch, emulsion: Emulsion) -> Iterator[BatchFinding]:
    """Judge uncharged emulsifiers by their HLB: those for water in oil by how much water there is, others by what the oils require."""
    needs, has = emulsion.required, emulsion.has
    charged = any(card.charge is not Charge.NONE for card in emulsion.emulsifiers)
    if has is None or charged or emulsion.soap or emulsion.takes_up >= emulsion.water_share:
        return
    place, inner = _place_of(emulsion.emulsifiers[0], batch), batch.constants[WATER_IN_OIL]
    if inner.low <= has <= inner.highest:
        water = emulsion.water_share / (emulsion.water_share + emulsion.oil_share)
        most = batch.constants[MOST_WATER]
        if water * 100 > most.highest:
            yield batch.caution(
                "hlb-far-off",
                place,
                f"the emulsifiers have an HLB of {plain_number(has, 3)}, and those of {range_of(inner, '')} hold drops of water in oil "
                f"({basis_of(inner)}). Here {percent(water)} of water and oil is water, and oil holds no more than {range_of(most, '%')} "
                f"({basis_of(most)}): such an emulsion often parts.",
                f"For oil in water: {_pair(emulsion)} For water in oil, take less water. {_PROVE}",
                "",
            )
    elif needs is not None and abs(needs - has) > batch.constants[FAR_OFF].typical:
        yield batch.caution(
            "hlb-far-off",
            place,
            f"the oils require an HLB of about {plain_number(needs, 3)} ({_METHOD}), and the emulsifiers have {plain_number(has, 3)}: such "
            "an emulsion often parts.",
            f"{_pair(emulsion)} It is a starting point, not a proof. {_PROVE}",
            "",
        )


def _pair(emulsion: Emulsion) -> str:
    if emulsion.share_of_first is None:
        return "Pair an emulsifier of high HLB with one of low HLB, so that the two together come near what the oils require."
    high, low = emulsion.emulsifiers
    share: Fraction = emulsion.share_of_first
    return (
        f"Of the emulsifiers together, {plain_number(share * 100, 3)} % {inside(high)} and {plain_number((1 - share) * 100, 3)} % "
        f"{inside(low)} would come to it."
    )
