"""A home size of a recipe that stands twice, also in other words."""

from collections.abc import Iterator
from dataclasses import replace

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio


@rule_on(STUDIO, FindingKind("home-size-twice", STOP, "Two sizes of a home batch come to the same."))
def find_home_sizes_twice(studio: Studio) -> Iterator[Finding]:
    """Look for sizes of one recipe in one class that come to the same: there would be two sheets of it."""
    for studio_class in studio.classes.values():
        for make in studio_class.makes:
            sizes = [replace(size, written="") for size in make.at_home]
            for number, size in enumerate(make.at_home):
                if sizes[number] in sizes[:number]:
                    first = make.at_home[sizes.index(sizes[number])]
                    yield stop(
                        "home-size-twice",
                        size.place,
                        f'The home size "{size.written}" is the same as "{first.written}", so there would be two sheets of one size.',
                        "Remove one of the two, or correct it.",
                    )
