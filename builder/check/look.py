"""The look of a studio: colours that cannot be read, a logo or a portrait that is not there, a menu that leads nowhere."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.own_document import MainPage
from builder.model.studio import PICTURE_ENDINGS, Studio
from builder.rules.look.palette import accent_of, paper_of
from builder.words.nearest import did_you_mean


@rule_on(
    STUDIO,
    FindingKind("colour-hard-to-read", CAUTION, "A colour of the studio's own cannot be read well where it stands."),
    FindingKind("logo-missing", STOP, "The logo is not there, or is no picture."),
    FindingKind("portrait-missing", STOP, "The portrait of the teacher is not there, or is no picture."),
    FindingKind("menu-unknown", STOP, "The menu names a page that there is not."),
)
def find_look_amiss(studio: Studio) -> Iterator[Finding]:
    """Look at each thing that studio.yaml says of the look."""
    look = studio.profile.look
    for key, written, used, where in (
        ("paper", look.paper, paper_of(look), "Dark words on it"),
        ("accent", look.accent, accent_of(look), "Words in it on your paper"),
    ):
        if written and written != used:
            wrong = f"{where} cannot be read by everybody: the contrast is too low (WCAG 2.2). Pages show {used} instead."
            yield caution("colour-hard-to-read", look.at(key), wrong, f'Write "{used}", or another shade. By night one that fits is shown.')
    for kind, picture in (("logo-missing", look.logo), ("portrait-missing", look.portrait)):
        if picture is not None and picture.text not in studio.pictures:
            endings = ", ".join(PICTURE_ENDINGS)
            wrong = f'There is no picture "{picture}" beside studio.yaml.'
            yield stop(kind, picture.place, wrong, f"Put it there, or correct the name. A picture ends in {endings}.")
    known = (*MainPage, *(key for key in studio.pages if key != "welcome"))
    for name in look.menu or ():
        if name.text not in known:
            wrong = f'The menu cannot lead to "{name}", which is no page.'
            yield stop("menu-unknown", name.place, wrong, f"Write some of these: {', '.join(known)}.{did_you_mean(name.text, known)}")
