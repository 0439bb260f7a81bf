"""How many labels of which finish a product needs, for the JSON of a class."""

from collections import Counter

from builder.compose.recipe.json_number import Json
from builder.model.teaching.class_plan import MadeProduct


def labels_json(made: MadeProduct) -> list[Json]:
    """Return a row for each finish of each kind of container: what was chosen, units in a package, labels, those of open choices."""
    rows: list[Json] = []
    for one in made.containers:
        alike = Counter((jar.variant.chosen, jar.units) for jar in one.jars)
        still_open = Counter((jar.variant.chosen, jar.units) for jar in one.jars if jar.is_open)
        rows += [
            {
                "container": one.filling.fill.container.text,
                "chosen": dict(chosen),
                "units": units,
                "labels": count,
                "open": still_open[chosen, units],
            }
            for (chosen, units), count in alike.items()
        ]
    return rows
