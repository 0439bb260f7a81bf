"""A volume of something whose density nobody knows."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.rules.reach import recipes_using
from builder.words.fold import fold


@rule_on(
    STUDIO,
    FindingKind("pack-weight-unknown", CAUTION, "A pack is sold by volume, and without a density nobody knows its weight."),
    FindingKind("stroke-weight-unknown", CAUTION, "The stroke of a pump is a volume, and without a density nobody knows its weight."),
)
def find_supplies_without_weight(studio: Studio) -> Iterator[Finding]:
    """See that each pack of an ingredient, and each stroke of a pump, has a weight."""
    for supply in studio.supplies:
        card = studio.stocked(supply.name)
        if card is None or isinstance(supply.size, int):
            continue
        about = recipes_using({fold(name) for name in (card.name, *card.also_called)}, studio)
        because = f"becomes a weight only through a density, and none is known for {card.name}"
        if supply.weight(card) is None:
            yield caution(
                "pack-weight-unknown",
                supply.at("pack"),
                f'"{supply.written}" {because}, so this pack and its price cannot be counted.',
                "Weigh a full pack less an empty one, and write beside it for example"
                ' "weighs: 3.75 kg" and "measured: full jug less the empty one"; or enter the density on a card in shelf/ingredients/.',
                about=about,
            )
        if supply.pump and supply.stroke(card) is None:
            yield caution(
                "stroke-weight-unknown",
                supply.pump.place,
                f"The stroke of this pump is a volume, which {because}, so that strokes cannot be counted.",
                'Weigh ten strokes, and write "strokes: 10" and "weigh: 78 g" in place of the volume.',
                about=about,
            )
