"""A lesson or page that points at something that is not there."""

from collections.abc import Iterator
from posixpath import basename, dirname, join, normpath, splitext

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.studio import PICTURE_ENDINGS, Studio
from builder.model.subject import Subject, WholeClass
from builder.model.teaching.lesson import Block, CautionHere, DrawingHole, LinkHole, LinkTo, PictureHole, Piece, Prose
from builder.words.nearest import did_you_mean

_About = frozenset[Subject]


@rule_on(
    STUDIO,
    FindingKind("caution-unknown", STOP, "A text asks for a caution that does not exist, so that a warning would be missing."),
    FindingKind("drawing-unknown", STOP, "A text calls for a drawing that does not exist."),
    FindingKind("link-broken", STOP, "A link leads to something that does not exist."),
    FindingKind("picture-missing", STOP, "A text shows a picture that is not there."),
)
def find_broken_links(studio: Studio) -> Iterator[Finding]:
    """Follow each caution, drawing, picture and link."""
    for studio_class in studio.classes.values():
        folder, about = f"classes/{studio_class.key}", frozenset[Subject]({WholeClass(studio_class.key)})
        blocks = (*studio_class.lesson.introduction, *(block for part in studio_class.lesson.parts for block in part.blocks))
        yield from _follow(blocks, folder, about, studio)
        if studio_class.picture:
            yield from _picture(studio_class.picture.file, folder, about, studio)
    for page in studio.pages.values():
        yield from _follow(page.blocks, dirname(page.place.file), frozenset(), studio)


def _follow(blocks: tuple[Block, ...], folder: str, about: _About, studio: Studio) -> Iterator[Finding]:
    for block in blocks:
        match block:
            case CautionHere(name):
                yield from _caution(name, about, studio)
            case Prose(pieces):
                yield from _holes(pieces, folder, about, studio)
            case _:
                for step in block.steps:
                    yield from _holes(step.pieces, folder, about, studio)


def _caution(name: Name, about: _About, studio: Studio) -> Iterator[Finding]:
    if name.text not in studio.cautions and name.text not in studio.unread.cautions:
        near = did_you_mean(name.text, studio.cautions)
        yield stop(
            "caution-unknown",
            name.place,
            f'There is no caution "{name}".',
            f"`stillroom list cautions` shows those that there are; or write yours into shelf/cautions/.{near}",
            about=about,
        )


def _holes(pieces: tuple[Piece, ...], folder: str, about: _About, studio: Studio) -> Iterator[Finding]:
    for piece in pieces:
        if isinstance(piece, PictureHole):
            yield from _picture(piece.file, folder, about, studio)
        elif isinstance(piece, DrawingHole):
            if piece.name.key not in studio.drawings:
                names = [drawing.name for drawing in studio.drawings.values()]
                yield stop(
                    "drawing-unknown",
                    piece.name.place,
                    f'There is no drawing "{piece.name}".',
                    f"`stillroom list drawings` shows those that there are; a picture of yours is ![what it shows](its-file.png)."
                    f"{did_you_mean(piece.name.text, names)}",
                    about=about,
                )
        elif isinstance(piece, LinkHole):
            there, unread = (
                (studio.pages.keys(), studio.unread.pages) if piece.kind is LinkTo.PAGE else (studio.classes.keys(), studio.unread.classes)
            )
            if piece.target.text not in there | unread:
                yield stop(
                    "link-broken",
                    piece.target.place,
                    f'There is no {piece.kind} "{piece.target}" to link to.',
                    f"Correct the name.{did_you_mean(piece.target.text, there)}",
                    about=about,
                )


def _picture(file: Name, folder: str, about: _About, studio: Studio) -> Iterator[Finding]:
    path = normpath(join(folder, file.text))
    if path in studio.pictures:
        return
    beside = [basename(picture) for picture in studio.pictures if dirname(picture) == dirname(path)]
    wrong = f'There is no picture "{file}" beside this text.'
    remedy = f"Put it there, or correct its name.{did_you_mean(basename(path), beside)}"
    if path in studio.other_files:
        ending = splitext(path)[1]
        wrong = f'"{file}" is there, but a file whose name ends in "{ending}" is not taken for a picture.'
        remedy = f"Save the picture as one of {', '.join(PICTURE_ENDINGS)}."
    yield stop("picture-missing", file.place, wrong, remedy, about=about)
