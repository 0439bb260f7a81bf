"""A picture that is made of the same is taken from the last publication; whatever has changed in it or about it is made again."""

import io
import random
from dataclasses import replace
from pathlib import Path
from unittest.mock import patch

import pytest
from PIL import Image

from builder.library import LAYOUTS
from builder.model.document import CopiedFile, Folder, Origin, Publication
from builder.model.sharing import SharingPicture
from builder.pictures import picture_at
from builder.pictures.sharing import draw_sharing
from builder.press import kept_pictures, press_publication

SHARED = SharingPicture("sharing/index.png", "Test studio", "Soap, slowly", "")


def photograph(shade: int) -> bytes:
    written = io.BytesIO()
    Image.new("RGB", (60, 40), (shade, 80, 90)).save(written, "JPEG")
    return written.getvalue()


class Desk:
    """Two photographs and two drawn pictures, published over the last output and beside it into an empty folder."""

    def __init__(self, home: Path) -> None:
        self.home, self.studio, self.number = home, home / "studio", 0
        self.studio.mkdir()
        self.width, self.drawn = 30, [SHARED, replace(SHARED, path="sharing/one.png", title="One bar")]
        for name in ("a", "b"):
            (self.studio / f"{name}.jpg").write_bytes(photograph(100))

    def publish(self, output: Path) -> int:
        """Publish, and give how many pictures were made."""
        copied = tuple(CopiedFile(Folder.SITE, f"{name}.jpg", Origin.PICTURES, f"{name}.jpg", self.width) for name in ("a", "b"))
        with (
            patch("builder.press.files.picture_at", wraps=picture_at) as at,
            patch("builder.press.files.draw_sharing", wraps=draw_sharing) as drew,
        ):
            press_publication(
                Publication((), copied, drawn=tuple(self.drawn)),
                studio_folder=self.studio,
                layout_folders=(LAYOUTS,),
                output=output,
                progress=lambda _: None,
            )
        return at.call_count + drew.call_count

    def publish_both_ways(self) -> int:
        self.number += 1
        made, all_made = self.publish(self.home / "again"), self.publish(self.home / str(self.number))
        again, fresh = (
            {path.relative_to(output).as_posix(): path.read_bytes() for path in output.rglob("*") if path.is_file()}
            for output in (self.home / "again", self.home / str(self.number))
        )
        assert again == fresh
        assert all_made == 4
        return made


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return Desk(tmp_path)


@pytest.mark.long
def test_each_change_makes_what_it_is_about_and_no_more(desk: Desk) -> None:
    assert desk.publish_both_ways() == 4
    assert desk.publish_both_ways() == 0
    (desk.studio / "a.jpg").write_bytes(photograph(120))
    assert desk.publish_both_ways() == 1
    desk.drawn[1] = replace(desk.drawn[1], title="Two bars")
    assert desk.publish_both_ways() == 1
    desk.width = 20
    assert desk.publish_both_ways() == 2


@pytest.mark.long
def test_a_picture_that_was_changed_in_the_output_is_made_again(desk: Desk) -> None:
    desk.publish_both_ways()
    (desk.home / "again/site/sharing/one.png").write_bytes(b"something else")
    (desk.home / "again/site/a.jpg").unlink()
    assert desk.publish_both_ways() == 2


@pytest.mark.long
@pytest.mark.parametrize("text", ["{", "", "[]", '{"site/a.jpg": 3}', '{"site/a.jpg": ["x"]}', "\udcff"])
def test_notes_that_cannot_be_read_are_none(desk: Desk, text: str) -> None:
    desk.publish_both_ways()
    (desk.home / "again" / kept_pictures.FILE).write_bytes(text.encode("utf-8", "surrogateescape"))
    assert desk.publish_both_ways() == 4


@pytest.mark.long
def test_another_library_makes_all_again(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    desk.publish_both_ways()
    monkeypatch.setattr(kept_pictures, "_maker", lambda: "another version")
    assert desk.publish_both_ways() == 4


@pytest.mark.long
def test_random_changes_give_what_a_fresh_publication_gives(desk: Desk) -> None:
    chance = random.Random(5)
    for _ in range(6):
        (desk.studio / chance.choice(["a.jpg", "b.jpg"])).write_bytes(photograph(chance.randrange(3)))
        desk.drawn[0] = replace(desk.drawn[0], tagline=chance.choice(["Soap", "Salts"]))
        desk.width = chance.choice([20, 30])
        desk.publish_both_ways()
