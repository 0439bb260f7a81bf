"""A telephone number that pages cannot turn into a link, since it cannot be told how it is dialled from elsewhere."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.rules.basis import basis
from builder.rules.dates.telephone import Undialled, dialled, home_code


@rule_on(
    STUDIO,
    FindingKind("phone-not-dialled", CAUTION, "A telephone number has no link on pages, since it cannot be dialled as it is written."),
)
def find_numbers_that_cannot_be_dialled(studio: Studio) -> Iterator[Finding]:
    """Turn the number of the studio as its pages do."""
    number = studio.profile.contact.get("phone")
    found = dialled(studio, number) if number else ""
    if isinstance(found, Undialled):
        wrong, remedy = _said(studio, str(number), found)
        yield caution("phone-not-dialled", studio.profile.at("contact"), f"{wrong} Pages show it without a link that calls it.", remedy)


def _said(studio: Studio, number: str, why: Undialled) -> tuple[str, str]:
    home = home_code(studio)
    if why is Undialled.NOT_A_NUMBER:
        return (
            f'"{number}" is more than a telephone number.',
            "Write the number alone, and the rest on a page.",
        )
    if number.strip().startswith("+"):
        return f'"{number}" has too few or too many figures for its country.', "Write all of its figures, the code of the country first."
    if home is None:
        wrong = f'Which country "{number}" is in is not said, and it is dialled with another code in each.'
        return wrong, "Write the number with + and the code of your country, or write `where:` with the country."
    length = f"{home.shortest}" if home.shortest == home.longest else f"{home.shortest} to {home.longest}"
    before = f", and {home.trunk} before it at home" if home.trunk else ""
    rests_on = basis(home.source, home.at, home.known)
    wrong = f'"{number}" is no whole number of the country {home.country}: one has {length} figures{before} ({rests_on}).'
    return wrong, f"Write it with its area code, or with +{home.code} before it."
