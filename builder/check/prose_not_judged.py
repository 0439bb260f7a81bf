"""A studio that writes in another language than English: nobody here reads its words.

Decided: one caution for the whole studio, which a reason answers. Why: a studio has to be told once, and what is told on every line is read
on none.
"""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.label.language import OWN
from builder.model.studio import Studio


@rule_on(
    STUDIO,
    FindingKind("prose-not-judged", CAUTION, "A studio writes in another language than English, and its words are searched for nothing."),
)
def find_prose_not_judged(studio: Studio) -> Iterator[Finding]:
    """Look at the language of the studio."""
    language = studio.profile.language
    if language != OWN:
        yield caution(
            "prose-not-judged",
            studio.profile.at("language"),
            f"What lessons, recipes and pages say in {language} is not judged, since the rules about words know English ones alone. "
            "Nothing looks in them for unsafe steps, for flames near vapour, for claims that make a product a medicine, for headings that "
            "deny lye or raw soap, or for lye that no step makes at home. Amounts, lye, limits and who watches whom are checked "
            "all the same.",
            "Read every step beside the cautions of its sheet, and have somebody who knows the trade and the language read it too. Then "
            'write into studio.yaml who did, and when: `accepts: {prose-not-judged: "..."}`.',
        )
