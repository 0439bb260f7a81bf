"""caution-unknown, picture-missing, link-broken: a lesson or page that points at something that is not there."""

from collections.abc import Iterator
from posixpath import dirname, join, normpath

from builder.model.finding import Finding, stop
from builder.model.lesson import Block, CautionHere, LinkHole, PictureHole, Piece, Prose, Steps
from builder.model.nearest import did_you_mean
from builder.model.studio import Studio


def find_broken_links(studio: Studio) -> Iterator[Finding]:
    """Follow each caution, picture and link."""
    for studio_class in studio.classes.values():
        blocks = [*studio_class.lesson.introduction, *(block for part in studio_class.lesson.parts for block in part.blocks)]
        yield from _follow(blocks, f"classes/{studio_class.key}/class.yaml", studio)
        if studio_class.picture:
            yield from _picture(PictureHole(studio_class.picture.file, ""), f"classes/{studio_class.key}/class.yaml", studio)
    for page in studio.pages.values():
        yield from _follow(page.blocks, page.place.file, studio)


def _follow(blocks: list[Block] | tuple[Block, ...], file: str, studio: Studio) -> Iterator[Finding]:
    for block in blocks:
        match block:
            case CautionHere(name):
                if name.text not in studio.cautions:
                    yield stop(
                        "caution-unknown",
                        name.place,
                        f'There is no caution "{name}".',
                        f"Name a file of the stock's cautions or of shelf/cautions/.{did_you_mean(name.text, studio.cautions)}",
                    )
            case Prose(pieces):
                yield from _holes(pieces, file, studio)
            case Steps(steps):
                for step in steps:
                    yield from _holes(step.pieces, file, studio)


def _holes(pieces: tuple[Piece, ...], file: str, studio: Studio) -> Iterator[Finding]:
    for piece in pieces:
        if isinstance(piece, PictureHole):
            yield from _picture(piece, file, studio)
        elif isinstance(piece, LinkHole):
            targets = studio.pages if piece.kind == "page" else studio.classes
            if piece.target.text not in targets:
                yield stop(
                    "link-broken",
                    piece.target.place,
                    f'There is no {piece.kind} "{piece.target}" to link to.',
                    f"Correct the name.{did_you_mean(piece.target.text, targets)}",
                )


def _picture(picture: PictureHole, file: str, studio: Studio) -> Iterator[Finding]:
    path = normpath(join(dirname(file), picture.file.text))
    if path not in studio.pictures:
        yield stop(
            "picture-missing",
            picture.file.place,
            f'There is no picture "{picture.file}" beside this file.',
            f"Put it there, or correct its name.{did_you_mean(path, studio.pictures)}",
        )
