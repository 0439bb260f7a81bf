"""picture-unreadable, picture-in-part: pictures of which nothing, or not everything, can be published."""

from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.place import Place
from builder.pictures import PictureError, clean_picture
from builder.read.text.text_files import TextFolder

FINDS = (
    FindingKind("picture-in-part", CAUTION, "Something of a drawing is left out when it is published."),
    FindingKind("picture-unreadable", STOP, "A file cannot be read as a picture."),
)

# More than any camera writes.
MOST_BYTES = 60_000_000


def find_faulty_pictures(folder: TextFolder, names: list[str]) -> list[Finding]:
    """Look at each picture as it would be published."""
    return [finding for name in names for finding in _look(folder, name)]


def _look(folder: TextFolder, name: str) -> list[Finding]:
    path, place = folder.root / name, Place(folder.shown_as + name)
    try:
        if path.stat().st_size > MOST_BYTES:
            raise PictureError("This picture is larger than 60 MB, far more than a page can show.")
        picture = clean_picture(path.read_bytes(), path.suffix)
    except OSError:
        wrong, remedy = "This picture cannot be opened.", "Look whether it is a plain file that you may read."
        return [stop("picture-unreadable", place, wrong, remedy)]
    except PictureError as error:
        remedy = "Save the picture anew as a JPEG, PNG or WebP file, or a drawing as a plain SVG; or remove it."
        return [stop("picture-unreadable", place, error.wrong, remedy)]
    if not picture.left_out:
        return []
    wrong = (
        "What is published of this drawing is only what draws, since a drawing can hold programs and send readers elsewhere. "
        f"Left out: {', '.join(picture.left_out)}. It may look otherwise than you know it."
    )
    remedy = "Save it as a plain SVG without these. Put a photograph that stands within it beside the text as a picture of its own."
    return [caution("picture-in-part", place, wrong, remedy)]
