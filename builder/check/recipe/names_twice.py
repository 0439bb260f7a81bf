"""Two documents that would be written to the same address."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.document import SITE_PAGES
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio

ADDRESS_TAKEN = FindingKind("address-taken", STOP, "Two documents would be written to the same address, and one would overwrite the other.")
TAKEN = (*SITE_PAGES, "find", "404", "pictures", "styles")


@rule_on(STUDIO, ADDRESS_TAKEN)
def find_names_twice(studio: Studio) -> Iterator[Finding]:
    """Look for pages whose address one of ours needs."""
    for page in studio.pages.values():
        if page.key in TAKEN:
            yield stop(
                "address-taken",
                page.place,
                f'The address "{page.key}" is needed for a page that every site has, so this page would overwrite it.',
                "Give the file another name.",
            )
