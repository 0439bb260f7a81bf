"""`containers.yaml` becomes the containers of the library, or the studio's own."""

from builder.model.finding import Finding
from builder.model.recipe.container import Container
from builder.read.known import Known
from builder.read.shapes.library import ContainerShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import each_made
from builder.words.fold import fold


def read_containers(placed: PlacedData, known: Known, findings: list[Finding]) -> dict[str, Container]:
    """Read the containers of one file, keyed by their folded names."""
    return {fold(name): container for name, container in each_made(ContainerShape, placed, findings, known).items()}
