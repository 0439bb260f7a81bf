"""`label_regions.yaml` becomes the rules of each region for a list of ingredients."""

from builder.model.finding import Finding
from builder.model.label.labelling import LabelRegion, RegionRule
from builder.read.shapes.library import LabelRegionShape
from builder.read.yaml.fit import Known, fit_each
from builder.read.yaml.placed_yaml import PlacedYaml


def read_label_regions(placed: PlacedYaml, known: Known, findings: list[Finding]) -> dict[str, LabelRegion]:
    """Read the regions, keyed by their names."""
    found = {}
    for name, shape in fit_each(LabelRegionShape, placed, findings, known):
        rules = {str(info.alias): getattr(shape, field) for field, info in LabelRegionShape.model_fields.items()}
        found[name] = LabelRegion(name, {key: RegionRule(one.says, one.source, one.at, one.known) for key, one in rules.items() if one})
    return found
