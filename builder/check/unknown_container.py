"""unknown-container: a recipe fills a container that no list knows."""

from collections.abc import Iterator

from builder.model.finding import Finding, stop
from builder.model.nearest import did_you_mean
from builder.model.studio import ANY, Studio


def find_unknown_containers(studio: Studio) -> Iterator[Finding]:
    """Look up the container of each recipe."""
    known = [container.name for container in studio.containers.values()]
    for recipe in studio.recipes.values():
        name = recipe.fill.container
        if studio.container(name) is None and not studio.unread.containers & {name.key, ANY}:
            yield stop(
                "unknown-container",
                name.place,
                f'No container is called "{name}".',
                f"Correct the name, or add it to shelf/containers.yaml with its capacity.{did_you_mean(name.text, known)}",
            )
