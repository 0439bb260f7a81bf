"""The pictures of pages: which files each is published as, and the element from which a browser takes the one that it needs.

Decided: a photograph is named in three widths of AVIF, then of WebP, with a JPEG (PNG where something shows through) for browsers that know
neither, and a phone is told of the smaller ones alone. Why: what a phone at most loads is then known when the page is made.
"""

from enum import Enum
from pathlib import PurePosixPath

from markupsafe import Markup

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.views.site.picture import PictureView
from builder.model.document import CopiedFile, Folder, Origin
from builder.model.picture import ON_A_PHONE, ON_A_PHONE_IN_A_ROW, PictureFile
from builder.model.studio import Studio

# The kinds in which a photograph is named, the lightest first: a browser takes the first that it knows.
_MODERN = (".avif", ".webp")
# The widest window that is a phone's, as `site.css` has it.
_PHONE = "(max-width: 43.99rem)"


class Shown(Enum):
    """How a page shows a picture: how wide in which window (CSS), the most that a phone is told of, whether it waits to be scrolled to."""

    BY_ITSELF = ("(min-width: 44rem) 30rem, calc(100vw - 2rem)", ON_A_PHONE, False)
    IN_TEXT = ("(min-width: 44rem) 40rem, calc(100vw - 2rem)", ON_A_PHONE, True)
    IN_A_ROW = ("(min-width: 66rem) 18rem, calc(50vw - 1.6rem)", ON_A_PHONE_IN_A_ROW, True)
    FIRST_IN_A_ROW = ("(min-width: 66rem) 18rem, calc(50vw - 1.6rem)", ON_A_PHONE_IN_A_ROW, False)

    def __init__(self, sizes: str, phone: int, waits: bool) -> None:
        """Hold them."""
        self.sizes, self.phone, self.waits = sizes, phone, waits


def picture_view(edition: Edition, here: Address, file: str, alt: str, shown: Shown, title: str = "") -> PictureView:
    """Return a picture as a page shows it; `file` is its path in the studio folder."""
    picture = edition.studio.pictures.get(file, PictureFile(None))
    address = here.link_to(_usual(here.folder, file, picture))
    size = Markup(' width="{}" height="{}"').format(picture.size.width, picture.size.height) if picture.size else ""
    waits = Markup(' loading="lazy"') if shown.waits else ""
    named = Markup(' title="{}"').format(title) if title else ""
    look = "" if shown is Shown.IN_TEXT else Markup(' class="picture"')
    image = Markup('<img{} src="{}" alt="{}"{}{}{} decoding="async">').format(look, address, alt, named, size, waits)
    if not picture.widths:
        return PictureView(address, alt, str(image))
    small = [width for width in picture.widths if width <= shown.phone] or picture.widths[:1]
    sources = Markup("").join(
        Markup('<source type="image/{}"{} srcset="{}" sizes="{}">').format(
            ending[1:],
            Markup(' media="{}"').format(media) if media else "",
            ", ".join(f"{here.link_to(_address(here.folder, file, width, ending))} {width}w" for width in widths),
            shown.sizes,
        )
        for media, widths in ((_PHONE, small), ("", picture.widths))
        for ending in _MODERN
    )
    return PictureView(address, alt, str(Markup("<picture>{}{}</picture>").format(sources, image)))


def logo_address(studio: Studio, here: Address) -> str:
    """Return the link from a page to the logo, a photograph in the smallest of its widths; empty where the studio has none."""
    logo = studio.profile.look.logo
    if logo is None:
        return ""
    picture = studio.pictures.get(logo.text, PictureFile(None))
    small = _address(here.folder, logo.text, min(picture.widths), ".webp") if picture.widths else None
    return here.link_to(small or _usual(here.folder, logo.text, picture))


def files_of(studio: Studio, folder: Folder, file: str) -> tuple[CopiedFile, ...]:
    """Return the files as which a picture is published."""
    picture = studio.pictures.get(file, PictureFile(None))
    usual = CopiedFile(folder, _usual(folder, file, picture).path, Origin.PICTURES, file, picture.usual_width if picture.widths else 0)
    kinds = ((width, ending) for width in picture.widths for ending in _MODERN)
    sized = (CopiedFile(folder, _address(folder, file, width, ending).path, Origin.PICTURES, file, width) for width, ending in kinds)
    return (usual, *sized)


def _usual(folder: Folder, file: str, picture: PictureFile) -> Address:
    return _address(folder, file, picture.usual_width, picture.everywhere) if picture.widths else addresses.picture(folder, file)


def _address(folder: Folder, file: str, width: int, ending: str) -> Address:
    """Return the place of a photograph of a width; its own ending tells it from one that has the same name but for that."""
    path = PurePosixPath(file)
    return addresses.picture(folder, str(path.with_name(f"{path.stem}--{path.suffix[1:]}--{width}{ending}")))
