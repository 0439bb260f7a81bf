"""The look of a studio: colours that cannot be read, a logo or a portrait that is not there, a menu that leads nowhere."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.label.own_font import FONT_ENDINGS, OwnFont
from builder.model.own_document import MainPage
from builder.model.place import Name
from builder.model.studio import PICTURE_ENDINGS, Studio
from builder.rules.look.palette import accent_of, paper_of
from builder.words.nearest import did_you_mean


@rule_on(
    STUDIO,
    FindingKind("colour-hard-to-read", CAUTION, "A colour of the studio's own cannot be read well where it stands."),
    FindingKind("logo-missing", STOP, "The logo is not there, or is no picture."),
    FindingKind("logo-not-drawn", CAUTION, "The logo is asked for where it cannot be drawn."),
    FindingKind("portrait-missing", STOP, "The portrait of the teacher is not there, or is no picture."),
    FindingKind("font-missing", STOP, "The font file of the studio's own is not there, or cannot be read."),
    FindingKind("font-not-to-embed", STOP, "The maker of a font does not allow that it goes into a PDF."),
    FindingKind("font-not-for-the-web", CAUTION, "The maker of a font does not allow that it lies on the web."),
    FindingKind("font-lacks-letters", CAUTION, "The font of the studio's own lacks letters that its titles need."),
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
    yield from _logo_not_drawn(studio)
    if look.title_font is not None and studio.title_font is not None:
        yield from _of_font(look.title_font, studio.title_font, studio)
    known = (*MainPage, *(key for key in studio.pages if key != "welcome"))
    for name in look.menu or ():
        if name.text not in known:
            wrong = f'The menu cannot lead to "{name}", which is no page.'
            yield stop("menu-unknown", name.place, wrong, f"Write some of these: {', '.join(known)}.{did_you_mean(name.text, known)}")


def _logo_not_drawn(studio: Studio) -> Iterator[Finding]:
    labels, logo = studio.profile.labels, studio.profile.look.logo
    if logo is None:
        if labels.logo:
            wrong = "Labels are to bear your logo, and studio.yaml names none, so that your name stands on them."
            remedy = "Name a picture beside studio.yaml, `look: {logo: logo.svg}`; or take out `logo: yes`."
            yield caution("logo-not-drawn", labels.place, wrong, remedy)
        return
    is_drawing = logo.text.lower().endswith(".svg")
    picture = studio.pictures.get(logo.text)
    if is_drawing and picture and picture.size is None and (labels.logo or studio.profile.public_address):
        wrong = f'"{logo}" does not say how wide it is to its height. Your name alone stands on labels, and in the pictures of your pages.'
        remedy = 'Save the drawing with a `viewBox`, for example `<svg viewBox="0 0 260 80" ...>`.'
        yield caution("logo-not-drawn", logo.place, wrong, remedy)


def _of_font(named: Name, font: OwnFont, studio: Studio) -> Iterator[Finding]:
    if font.typeface is None:
        endings = " or ".join(FONT_ENDINGS)
        wrong = f'There is no font "{named}" beside studio.yaml that can be read.'
        yield stop("font-missing", named.place, wrong, f"Put the file there, or correct the name. A font file ends in {endings}.")
        return
    if not font.may_print:
        wrong = f'The maker of "{named}" has written into it that it may not be put into documents (OS/2 fsType, OpenType 1.9).'
        yield stop("font-not-to-embed", named.place, wrong, "Ask its maker for a licence and a file that allow it, or name another font.")
        return
    if not font.may_travel:
        wrong = f'"{named}" may be printed, but not be handed on (OS/2 fsType, OpenType 1.9): pages keep the type of the reader.'
        remedy = "Take a font that may be installed by everybody, such as one under an open licence; or accept this with the reason."
        yield caution("font-not-for-the-web", named.place, wrong, remedy)
    missing = sorted({letter for text in _titles(studio) for letter in text if ord(letter) not in font.letters and not letter.isspace()})
    if missing:
        letters = ", ".join(f'"{letter}"' for letter in missing)
        wrong = f'"{named}" has no {letters}, which your titles need. That comes from another font, and a name on a label is set in ours.'
        yield caution("font-lacks-letters", named.place, wrong, "Take a font that has these letters, or write the titles without them.")


def _titles(studio: Studio) -> Iterator[str]:
    """Yield what is set in the font of titles."""
    yield studio.profile.name
    yield from (recipe.name for recipe in studio.recipes.values())
    for studio_class in studio.classes.values():
        yield studio_class.title
        yield from (part.title for part in studio_class.lesson.parts)
    yield from (page.title for page in studio.pages.values())
