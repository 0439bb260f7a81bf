"""`products.yaml` becomes the kinds of product that a recipe may be."""

from builder.model.finding import Finding
from builder.model.product import Product
from builder.read.fit import fit_each
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.stock import ProductShape


def read_products(placed: PlacedYaml, findings: list[Finding]) -> dict[str, Product]:
    """Read the kinds of product, keyed by their names."""
    return {
        name: Product(
            name,
            shape.identity,
            shape.contact,
            shape.made_with_lye,
            shape.declared_by,
            (shape.usual_ph.low, shape.usual_ph.high) if shape.usual_ph else None,
            shape.meets_water,
            shape.declared_by_in,
            shape.cooked,
            shape.used_on,
        )
        for name, shape in fit_each(ProductShape, placed, findings)
    }
