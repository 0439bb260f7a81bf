"""A studio's own saponification value that lies far outside what is published for that fat.

Decided: the reason for a far-off saponification value stands beside it (`because:`), not under `accepts:`. Why: it is about one fat, and
must not silence the next.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.figure_words import range_of
from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import Ingredient
from builder.model.studio import Studio
from builder.rules.basis import basis_of
from builder.words.plain_number import plain_number

FARTHEST = "farthest own saponification value"


@rule_on(
    STUDIO_UNWORKED,
    FindingKind(
        "saponification-far-off",
        STOP,
        "The saponification value of a card is far from what is published for that fat, and the lye follows from it.",
    ),
)
def find_saponification_far_off(studio: Studio) -> Iterator[Finding]:
    """Compare each own value with all that the card which it replaces has published, until the card gives a reason for it."""
    for card in {card.key: card for card in studio.ingredients.values()}.values():
        own, published = card.figure("saponification"), _published(card)
        if own is None or not published or own.because:
            continue
        away = studio.constants[FARTHEST].typical / 100
        low, high = min(one.low for one in published), max(one.highest for one in published)
        if own.low < low * (1 - away) or own.highest > high * (1 + away):
            yield _far_off(card, own, low, high, studio)


def _published(card: Ingredient) -> tuple[Figure, ...]:
    values = card.replaces.figures.get("saponification") if card.replaces else None
    return values.all if values else ()


def _far_off(card: Ingredient, own: Figure, low: Fraction, high: Fraction, studio: Studio) -> Finding:
    assert card.replaces is not None
    in_use = card.replaces.figure("saponification")
    assert in_use is not None
    most = plain_number(studio.constants[FARTHEST].typical)
    return stop(
        "saponification-far-off",
        own.place,
        f"{card.name} takes {range_of(own, 'mg of potassium hydroxide for each gram')} by this card, and {plain_number(low)} to "
        f"{plain_number(high)} by what is published ({basis_of(in_use)}, and others): it is more than {most} % beside that. "
        "The lye is worked out from it, and with too high a value lye is left in the soap and burns the skin.",
        f"Look at the certificate again. {_asked(own, low, high, studio)}If it is as written, write beside the figure why this fat is "
        "another one, as in `because: It is hydrogenated; the certificate of lot 12 states it.`",
    )


def _asked(own: Figure, low: Fraction, high: Fraction, studio: Studio) -> str:
    """Return the question whether the value is meant for sodium hydroxide, where it would then be a usual one."""
    cards = [studio.ingredients.get(name) for name in ("sodium hydroxide", "potassium hydroxide")]
    sodium, potassium = (card.figure("molar mass") if card else None for card in cards)
    if sodium is None or potassium is None:
        return ""
    meant = own.typical * potassium.typical / sodium.typical
    if not low <= meant <= high:
        return ""
    written = plain_number(own.typical)
    return (
        f"Is it in sodium hydroxide? {written} mg of that are {plain_number(meant, 4)} mg of potassium hydroxide, in which a "
        "saponification value is stated: then write this. "
    )
