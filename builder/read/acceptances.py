"""The `accepts:` lines of a file become acceptances, by the name of the finding that each accepts."""

from collections.abc import Mapping

from builder.model.finding import Acceptance
from builder.read.yaml.placed_yaml import PlacedYaml


def make_acceptances(reasons: Mapping[str, str], placed: PlacedYaml) -> dict[str, Acceptance]:
    """Return each reason the place at which it stands."""
    return {name: Acceptance(reason, placed.key_place("accepts", name)) for name, reason in reasons.items()}
