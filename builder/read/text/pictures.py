"""picture-unreadable, picture-in-part: pictures of which nothing, or not everything, can be published."""

from functools import cache

from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.picture import PictureFile, Size
from builder.model.place import Place
from builder.read.text.text_files import TextFolder

FINDS = (
    FindingKind("picture-in-part", CAUTION, "Something of a drawing is left out when it is published."),
    FindingKind("picture-unreadable", STOP, "A file cannot be read as a picture."),
)

# More than any camera writes.
MOST_BYTES = 60_000_000
UNREAD = PictureFile(None)


def read_pictures(folder: TextFolder, names: list[str]) -> dict[str, PictureFile]:
    """Look at each picture as it would be published; one that cannot be is named all the same."""
    return {name: _look(folder, name) for name in names}


def _look(folder: TextFolder, name: str) -> PictureFile:
    from builder.pictures import PictureError, clean_picture

    path, place = folder.root / name, Place(folder.shown_as + name)
    try:
        if path.stat().st_size > MOST_BYTES:
            raise PictureError("This picture is larger than 60 MB, far more than a page can show.")
        picture = clean_picture(path.read_bytes(), path.suffix)
    except OSError:
        wrong, remedy = "This picture cannot be opened.", "Look whether it is a plain file that you may read."
        folder.findings.append(stop("picture-unreadable", place, wrong, remedy))
        return UNREAD
    except PictureError as error:
        remedy = "Save the picture anew as a JPEG, PNG or WebP file, or a drawing as a plain SVG; or remove it."
        folder.findings.append(stop("picture-unreadable", place, error.wrong, remedy))
        return UNREAD
    if picture.left_out:
        folder.findings.append(_in_part(place, picture.left_out))
    return _file_of(picture.size, path.suffix.lower() != ".svg", picture.see_through)


@cache
def _file_of(size: Size | None, is_photograph: bool, see_through: bool) -> PictureFile:
    """Return the same value as before for a picture that is as it was, so that nothing is worked out anew for it."""
    return PictureFile(size, is_photograph, see_through)


def _in_part(place: Place, left_out: tuple[str, ...]) -> Finding:
    wrong = (
        "What is published of this drawing is only what draws, since a drawing can hold programs and send readers elsewhere. "
        f"Left out: {', '.join(left_out)}. It may look otherwise than you know it."
    )
    remedy = "Save it as a plain SVG without these. Put a photograph that stands within it beside the text as a picture of its own."
    return caution("picture-in-part", place, wrong, remedy)
