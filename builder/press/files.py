"""Pages to files, and files to copies. No path leaves the folder that it belongs to."""

import shutil
from collections.abc import Callable, Iterable
from pathlib import Path

from builder.fonts.files import font_file
from builder.model.document import CopiedFile, Document, Folder, MadeFile, Origin
from builder.model.sharing import SharingPicture
from builder.pictures import PictureError, picture_at
from builder.pictures.sharing import draw_sharing
from builder.press.folder import FolderError
from builder.press.kept import sum_of_file
from builder.press.kept_pictures import KeptPictures


def write_document(building: Path, document: Document | MadeFile, content: str | bytes) -> None:
    """Write one finished document or file below the folder that is being built."""
    target = _inside(building, Path(document.folder, document.path))
    target.parent.mkdir(parents=True, exist_ok=True)
    if isinstance(content, str):
        target.write_text(content, encoding="utf-8", newline="\n")
    else:
        target.write_bytes(content)


def copy_file(building: Path, copied: CopiedFile, origins: Iterable[Path], pictures: KeptPictures) -> None:
    """Copy one file; of several origins the first that has it counts. A picture of the studio is made anew, without what it tells."""
    sources = [_inside(origin, Path(copied.source)) for origin in origins]
    source = next((source for source in sources if source.is_file()), sources[-1])
    target = _inside(building, Path(copied.folder, copied.path))
    target.parent.mkdir(parents=True, exist_ok=True)
    if copied.origin is Origin.PICTURES:
        data, asked = source.read_bytes(), (source.suffix, copied.width, target.suffix)
        made_of = repr(asked).encode() + data
        try:
            target.write_bytes(pictures.made(f"{copied.folder}/{copied.path}", made_of, lambda: picture_at(data, *asked)))
        except PictureError as error:
            remedy = "Install Pillow anew from its own packages: `python -m pip install --force-reinstall pillow`."
            raise FolderError(error.wrong, remedy) from None
    else:
        shutil.copyfile(source, target)


def write_picture(building: Path, picture: SharingPicture, pictures: KeptPictures, of_logo: bytes, logo: Callable[[], bytes]) -> None:
    """Draw the picture that stands for a page where somebody passes it on; `logo` makes a photograph of the logo `of_logo`."""
    fonts = font_file("Fira Sans", "Regular"), font_file("Fira Sans", "Bold")
    made_of = "\n".join((repr(picture), *map(sum_of_file, fonts))).encode() + of_logo
    target = _inside(building, Path(Folder.SITE, picture.path))
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(pictures.made(f"{Folder.SITE}/{picture.path}", made_of, lambda: draw_sharing(picture, *fonts, logo())))


def _inside(folder: Path, path: Path) -> Path:
    root = folder.resolve()
    whole = (root / path).resolve()
    if not whole.is_relative_to(root):
        raise ValueError(f"{path} leads out of its folder")
    return whole
