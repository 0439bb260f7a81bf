"""`stock.yaml` becomes what the studio has counted on its shelf. What cannot be read is left out, and everything else is read."""

from builder.model.finding import Finding, stop
from builder.model.in_stock import InStock
from builder.model.nearest import did_you_mean
from builder.model.place import Name
from builder.model.supply import SupplyKind
from builder.read.fit import fit
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.in_stock import ContainerInStockShape, IngredientInStockShape, InStockShape, ItemInStockShape

EXAMPLE = "- {ingredient: olive oil, have: 2.3 kg, counted: 2027-02-20}"

_SHAPES: dict[SupplyKind, type[InStockShape]] = {
    SupplyKind.INGREDIENT: IngredientInStockShape,
    SupplyKind.CONTAINER: ContainerInStockShape,
    SupplyKind.ITEM: ItemInStockShape,
}


def read_in_stock(placed: PlacedYaml, findings: list[Finding]) -> tuple[InStock, ...]:
    """Read what is in stock, in order."""
    if not isinstance(placed.data, list):
        wrong = "A list of what is in stock is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, f'Begin each entry with a hyphen: "{EXAMPLE}".'))
        return ()
    read = (_read(placed, number, findings) for number in range(len(placed.data)))
    return tuple(one for one in read if one)


def _read(placed: PlacedYaml, number: int, findings: list[Finding]) -> InStock | None:
    entry = placed.at(number)
    kinds = [kind for kind in SupplyKind if isinstance(entry, dict) and kind in entry]
    if len(kinds) != 1:
        near = did_you_mean(next(iter(entry)), list(SupplyKind)) if not kinds and isinstance(entry, dict) and entry else ""
        wrong = "It is not clear what this is in stock: exactly one of ingredient, container and item says it."
        findings.append(stop("stock-unclear", placed.place(number), wrong, f'Write for example "{EXAMPLE}".{near}'))
        return None
    kind = kinds[0]
    shape = fit(_SHAPES[kind], placed, findings, number)
    if shape is None:
        return None
    return InStock(
        kind=kind,
        name=Name(str(getattr(shape, kind)), placed.place(number, kind)),
        have=shape.have,
        written=" ".join(str(placed.at(number, "have")).split()),
        counted=shape.counted.date(),
        place=placed.place(number),
        have_place=placed.place(number, "have"),
        counted_place=placed.place(number, "counted"),
    )
