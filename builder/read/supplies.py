"""`shelf/supplies.yaml` becomes the packs that the studio buys. What cannot be read is left out, and everything else is read."""

from collections.abc import Callable

from builder.model.finding import Finding, stop
from builder.model.nearest import did_you_mean
from builder.model.place import Name
from builder.model.supply import Pump, Supply, SupplyKind, Use
from builder.read.fit import fit
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.supplies import ContainerPackShape, IngredientPackShape, ItemPackShape

EXAMPLE = "- {ingredient: lotion base, pack: 1 gal, price: 68.00}"


def read_supplies(placed: PlacedYaml, findings: list[Finding]) -> tuple[Supply, ...]:
    """Read the packs of one file, in order."""
    if not isinstance(placed.data, list):
        wrong = "A list of packs is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, f'Begin each pack with a hyphen: "{EXAMPLE}".'))
        return ()
    made = (_read(placed, number, findings) for number in range(len(placed.data)))
    return tuple(supply for supply in made if supply)


def _read(placed: PlacedYaml, number: int, findings: list[Finding]) -> Supply | None:
    entry = placed.at(number)
    kinds = [kind for kind in SupplyKind if isinstance(entry, dict) and kind in entry]
    if len(kinds) != 1:
        findings.append(_unclear(placed, number, misspelt=not kinds))
        return None
    return _READ[kinds[0]](placed, number, findings)


def _unclear(placed: PlacedYaml, number: int, *, misspelt: bool) -> Finding:
    entry = placed.at(number)
    near = did_you_mean(next(iter(entry)), list(SupplyKind)) if misspelt and isinstance(entry, dict) and entry else ""
    wrong = "It is not clear what is in this pack: exactly one of ingredient, container and item says it."
    return stop("supply-unclear", placed.place(number), wrong, f'Write for example "{EXAMPLE}".{near}')


def _ingredient(placed: PlacedYaml, number: int, findings: list[Finding]) -> Supply | None:
    shape = fit(IngredientPackShape, placed, findings, number)
    if shape is None:
        return None
    pump = Pump(shape.pump.one, shape.pump.measured, placed.key_place(number, "pump")) if shape.pump else None
    return Supply(
        SupplyKind.INGREDIENT,
        Name(shape.ingredient, placed.place(number, "ingredient")),
        shape.pack,
        _written(placed, number),
        shape.price,
        shape.weighs,
        shape.measured,
        pump,
        keeps=shape.keeps,
        place=placed.place(number),
        size_place=placed.place(number, "pack"),
    )


def _container(placed: PlacedYaml, number: int, findings: list[Finding]) -> Supply | None:
    shape = fit(ContainerPackShape, placed, findings, number)
    if shape is None:
        return None
    name = Name(shape.container, placed.place(number, "container"))
    return _pieces(SupplyKind.CONTAINER, name, shape, None, placed, number)


def _item(placed: PlacedYaml, number: int, findings: list[Finding]) -> Supply | None:
    shape = fit(ItemPackShape, placed, findings, number)
    if shape is None:
        return None
    each = (shape.each_student, shape.each_group, shape.each_class, shape.each_container)
    classes = tuple(Name(key, placed.place(number, "classes", at)) for at, key in enumerate(shape.classes))
    use = Use(*each, classes=classes) if any(each) else None
    return _pieces(SupplyKind.ITEM, Name(shape.item, placed.place(number, "item")), shape, use, placed, number)


def _pieces(
    kind: SupplyKind, name: Name, shape: ContainerPackShape | ItemPackShape, use: Use | None, placed: PlacedYaml, number: int
) -> Supply:
    return Supply(
        kind,
        name,
        shape.pack,
        str(shape.pack),
        shape.price,
        use=use,
        place=placed.place(number),
        size_place=placed.place(number, "pack"),
    )


def _written(placed: PlacedYaml, number: int) -> str:
    return " ".join(str(placed.at(number, "pack")).split())


_READ: dict[SupplyKind, Callable[[PlacedYaml, int, list[Finding]], Supply | None]] = {
    SupplyKind.INGREDIENT: _ingredient,
    SupplyKind.CONTAINER: _container,
    SupplyKind.ITEM: _item,
}
