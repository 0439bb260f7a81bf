"""scale-in-grams-missing: no scale that reads in grams, so nothing can be weighed."""

from collections.abc import Iterator

from builder.model.finding import Finding, stop
from builder.model.place import NOWHERE
from builder.model.studio import Studio


def find_scales_missing(studio: Studio) -> Iterator[Finding]:
    """See that the studio and the home have a scale in grams; a studio.yaml that could not be read has said so already."""
    if studio.profile.place == NOWHERE:
        return
    for scales, key in ((studio.profile.scales, "scales"), (studio.profile.home_scales, "scales at home")):
        if not any(scale.unit == "g" for scale in scales):
            yield stop(
                "scale-in-grams-missing",
                studio.profile.at(key),
                f"`{key}:` has no scale that reads in grams, and every batch is weighed in grams first.",
                "Add one, for example `{name: bench scale, reads to: 1 g, up to: 5 kg}`.",
            )
