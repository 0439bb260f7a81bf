"""Who answers for a product is outside the region, or may be.

Decided: the country at the end of an address says whether a responsible person is inside; where it is missing it is asked for, and only a
country known to be elsewhere holds back labels. Why: a guess from a town would be none.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, FindingKind
from builder.model.place import Place
from builder.model.studio import Studio
from builder.model.subject import Labels, Subject
from builder.rules.basis import basis
from builder.words.fold import fold

NO_LABELS = "Accepted with a reason, no product gets a label sheet."


@rule_on(
    STUDIO,
    FindingKind(
        "responsible-person-outside",
        ACCEPTABLE_STOP,
        "The law wants a responsible person inside the region on the label, and the address is outside.",
    ),
    FindingKind(
        "responsible-person-open",
        CAUTION,
        "The law wants a responsible person inside the region on the label, and the address names no country.",
    ),
)
def find_responsible_persons_outside(studio: Studio) -> Iterator[Finding]:
    """Compare the country at the end of an address with the places that the region allows; without labels there is nothing to say."""
    region, made = studio.labelling.region, list(studio.recipes_made)
    inside = region.person_within
    if not inside or not made or not studio.profile.address:
        return
    who, place, address = _who(studio)
    country = fold(address[-1].split(",")[-1])
    if country in inside:
        return
    rule = region.rules["responsible person"]
    asked = (
        f"A label in this region ({region.name}) has the name and address of a responsible person inside it "
        f"({basis(rule.source, rule.at, rule.known)})"
    )
    remedy = (
        "Somebody inside the region has to take that on, in writing. Write in studio.yaml "
        "`responsible person: {name: ..., address: [..., COUNTRY]}`."
    )
    elsewhere = {name for other in studio.regions.values() for name in other.person_within} | set(studio.countries)
    beside = studio.regions.get(region.says("person may also be in"))
    tolerated = beside is not None and country in beside.person_within
    if country in elsewhere and not tolerated:
        about = frozenset[Subject](Labels(recipe.key) for recipe in made)
        wrong = f"{asked}, and the address of {who} is outside."
        yield stop("responsible-person-outside", place, wrong, f"{remedy} {NO_LABELS}", about=about, acceptable=True)
    elif beside and tolerated:
        yield caution("responsible-person-open", place, f"{asked}. The address of {who} is in {beside.in_words}.", remedy)
    else:
        wrong = f"{asked}, and the address of {who} does not say in which country it is."
        yield caution("responsible-person-open", place, wrong, f"End the address with the country. If it is not inside: {remedy}")


def _who(studio: Studio) -> tuple[str, Place, tuple[str, ...]]:
    """Return who answers: whom the studio names, or else the studio itself."""
    named = studio.profile.responsible
    return (
        (named.name, named.place, named.address) if named else (studio.profile.name, studio.profile.at("address"), studio.profile.address)
    )
