"""What a page shows: the files of a studio, what is typed and what is answered, and pictures of sheets."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

_FILE = re.compile(r"^`([\w/.-]+)`\n\n```\w*\n(.*?)^```$", flags=re.DOTALL | re.MULTILINE)
_CHANGE = re.compile(r"^In `([\w/.-]+)` the lines?\n\n```\w*\n(.*?)^```\n\nbecomes?\n\n```\w*\n(.*?)^```$", flags=re.DOTALL | re.MULTILINE)
_TYPED = re.compile(r"^```console\n(.*?)^```$", flags=re.DOTALL | re.MULTILINE)
_PICTURE = re.compile(r"!\[([^\]]+)\]\((print/[^)#]+)#(\d+)\)")
_STUDIO = "studio.yaml"
_PROMPT = "$ "


@dataclass(frozen=True)
class ShownFile:
    """A file of a studio with its whole text, and where in the page that text begins and ends."""

    name: str
    text: str
    at: tuple[int, int]


@dataclass(frozen=True)
class Change:
    """Lines of a file that become others, and where in the page they stand."""

    name: str
    before: str
    after: str
    at: tuple[int, int]

    def made_in(self, text: str) -> str:
        """Return the text of the file once it is changed, which a command may have done. Raises ValueError where it lacks the lines."""
        if self.after in text:
            return text
        if self.before not in text:
            raise ValueError(f"{self.name} has no lines {self.before!r}")
        return text.replace(self.before, self.after, 1)


@dataclass(frozen=True)
class Typed:
    """A command as it is typed and what it answers, and where in the page the answer begins and ends."""

    command: str
    answer: str
    at: tuple[int, int]


@dataclass(frozen=True)
class PagePicture:
    """A page of a sheet: what it shows, the sheet's path below the output, the page counted from 1."""

    alt: str
    sheet: str
    number: int


def files_of(text: str) -> Mapping[str, str]:
    """Return the files of the studio that a page shows, each as it is at the end of the page; none where it shows no studio.yaml."""
    files: dict[str, str] = {}
    for one in what_is_done(text):
        if isinstance(one, ShownFile):
            files[one.name] = one.text
        elif isinstance(one, Change) and one.name in files:
            files[one.name] = one.made_in(files[one.name])
    return files if _STUDIO in files else {}


def what_is_done(text: str) -> list[ShownFile | Change | Typed]:
    """Return files, changes and commands in the order in which a reader comes to them."""
    files = [ShownFile(found[1], found[2], found.span(2)) for found in _FILE.finditer(text)]
    changes = [Change(found[1], found[2], found[3], found.span()) for found in _CHANGE.finditer(text)]
    return sorted([*files, *changes, *_typed(text)], key=lambda one: one.at)


def _typed(text: str) -> Iterator[Typed]:
    for block in _TYPED.finditer(text):
        at = block.start(1)
        for part in re.split(rf"^(?={re.escape(_PROMPT)})", block[1], flags=re.MULTILINE):
            command, _, answer = part.partition("\n")
            if command:
                begins = at + len(command) + 1
                yield Typed(command.removeprefix(_PROMPT), answer, (begins, begins + len(answer)))
            at += len(part)


def pictures_of(text: str) -> list[PagePicture]:
    """Return the pictures that a page shows, in their order."""
    return [PagePicture(found[1], found[2], int(found[3])) for found in _PICTURE.finditer(text)]


def with_pictures(text: str, drawn: Mapping[PagePicture, tuple[str, str]]) -> str:
    """Put into a page the address of each picture and, behind it, that of the whole sheet; what was not drawn is named in words."""

    def shown(found: re.Match[str]) -> str:
        picture = PagePicture(found[1], found[2], int(found[3]))
        if picture not in drawn:
            return f"*({picture.alt}: not drawn on this machine)*"
        here, sheet = drawn[picture]
        return f"[![{picture.alt}]({here})]({sheet})"

    return _PICTURE.sub(shown, text)
