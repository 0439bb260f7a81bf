"""`containers.yaml` becomes the containers of the library, or the studio's own."""

from builder.model.finding import Finding
from builder.model.recipe.container import Container, Outside
from builder.read.known import Known
from builder.read.shapes.library import ContainerShape
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold


def read_containers(placed: PlacedYaml, known: Known, findings: list[Finding]) -> dict[str, Container]:
    """Read the containers of one file, keyed by their folded names."""
    return {
        fold(name): shape.make(
            Container,
            name=name,
            fill_weight_of=tuple(product.name for product in shape.fill_weight_of),
            outside=shape.make(Outside),
            place=placed.key_place(name),
        )
        for name, shape in fit_each(ContainerShape, placed, findings, known)
    }
