"""`regions.yaml` becomes the regions that a studio can lie in, each with its rules."""

from builder.model.finding import Finding
from builder.model.label.region import Region, RegionRule
from builder.read.known import Known
from builder.read.shapes.library import RegionRuleShape, RegionShape
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml


def read_regions(placed: PlacedYaml, known: Known, findings: list[Finding]) -> dict[str, Region]:
    """Read the regions, keyed by their names."""
    return {name: _region(name, shape) for name, shape in fit_each(RegionShape, placed, findings, known)}


def _region(name: str, shape: RegionShape) -> Region:
    said = {str(info.alias): getattr(shape, field) for field, info in RegionShape.model_fields.items()}
    rules = {key: RegionRule(one.says, one.source, one.at, one.known) for key, one in said.items() if isinstance(one, RegionRuleShape)}
    return Region(name, shape.in_words, shape.law, shape.locale, rules)
