"""Documents and copies stay inside their folders."""

from pathlib import Path

import pytest

from builder.model.document import CopiedFile, Document, Folder, Origin
from builder.press.files import copy_file, write_document
from builder.press.kept_pictures import KeptPictures


def test_a_page_is_written_as_it_is(tmp_path: Path) -> None:
    write_document(tmp_path, Document(Folder.SITE, "a/b.html", ""), "é\n")
    assert (tmp_path / "site" / "a" / "b.html").read_bytes() == "é\n".encode()


def test_of_several_origins_the_first_that_has_the_file_counts(tmp_path: Path) -> None:
    for name in ("own", "ours"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "both.css").write_text(name, encoding="utf-8")
    (tmp_path / "ours" / "one.css").write_text("ours", encoding="utf-8")
    origins = (tmp_path / "own", tmp_path / "ours")
    for name in ("both.css", "one.css"):
        copy_file(tmp_path, CopiedFile(Folder.SITE, f"styles/{name}", Origin.LAYOUTS, name), origins, KeptPictures(tmp_path / "none"))
    assert (tmp_path / "site" / "styles" / "both.css").read_text(encoding="utf-8") == "own"
    assert (tmp_path / "site" / "styles" / "one.css").read_text(encoding="utf-8") == "ours"


@pytest.mark.parametrize("path", ["../../outside.html", "a/../../../outside.html", "/outside.html"])
def test_no_path_leads_out(tmp_path: Path, path: str) -> None:
    (tmp_path / "studio").mkdir()
    nothing = KeptPictures(tmp_path / "none")
    (tmp_path / "outside.html").touch()
    with pytest.raises(ValueError, match="leads out"):
        write_document(tmp_path / "output", Document(Folder.SITE, path, ""), "")
    with pytest.raises(ValueError, match="leads out"):
        copy_file(tmp_path / "output", CopiedFile(Folder.SITE, "a.svg", Origin.PICTURES, path), (tmp_path / "studio",), nothing)


def test_a_link_out_of_the_studio_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "studio").mkdir()
    nothing = KeptPictures(tmp_path / "none")
    (tmp_path / "secret.txt").touch()
    (tmp_path / "studio" / "picture.svg").symlink_to(tmp_path / "secret.txt")
    with pytest.raises(ValueError, match="leads out"):
        copy_file(tmp_path / "output", CopiedFile(Folder.SITE, "a.svg", Origin.PICTURES, "picture.svg"), (tmp_path / "studio",), nothing)
