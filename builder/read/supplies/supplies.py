"""`shelf/supplies.yaml` becomes the packs that the studio buys. What cannot be read is left out, and everything else is read.

Decided: a supply that cannot be read stops, one that can be read but is doubtful cautions. Why: prices hurt nobody.
"""

from collections.abc import Callable

from builder.model.finding import Finding
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.supplies.supply import Pump, Supply, SupplyKind, Use
from builder.read.recipe.things import ThingWords, read_things
from builder.read.shapes.supplies import ContainerPackShape, IngredientPackShape, ItemPackShape
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import PlacedYaml

FINDS = (FindingKind("supply-unclear", STOP, "It is not clear what is in a pack."),)

WORDS = ThingWords("packs", "pack", "what is in this pack", "- {ingredient: lotion base, pack: 1 gal, price: 68.00}")


def read_supplies(placed: PlacedYaml, findings: list[Finding]) -> tuple[Supply, ...]:
    """Read the packs of one file, in order."""
    return read_things("supply-unclear", WORDS, placed, findings, lambda kind, number: _READ[kind](placed, number, findings))


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
        places=placed.places(number),
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
        places=placed.places(number),
    )


def _written(placed: PlacedYaml, number: int) -> str:
    return " ".join(str(placed.at(number, "pack")).split())


_READ: dict[SupplyKind, Callable[[PlacedYaml, int, list[Finding]], Supply | None]] = {
    SupplyKind.INGREDIENT: _ingredient,
    SupplyKind.CONTAINER: _container,
    SupplyKind.ITEM: _item,
}
