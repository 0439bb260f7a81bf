"""The template library: it refuses any name that it does not know, and escapes every text that is not already HTML.

Decided: `ours/` before the name of a template means the one that ships, also where the studio has one of that name. Why: a template of hers
can then be ours but for one block.

A template of the studio's own can be wrong, as any text of it can: that is a TemplateFault, with its line. It can do nothing but show what
its view holds, and say fixed sentences in the language of the run: `say`, `say_in`, `say_count`, as `builder/words/say.py` has them. A
message is plain text there too; what has tags is given to it by name.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import partial
from pathlib import Path
from pickle import PicklingError
from secrets import token_hex
from traceback import walk_tb
from typing import Any

from jinja2 import BytecodeCache, ChoiceLoader, FileSystemLoader, PrefixLoader, StrictUndefined, TemplateSyntaxError, UndefinedError, nodes
from jinja2.bccache import Bucket
from jinja2.utils import missing
from markupsafe import Markup, escape

from builder.compose.tried.sandbox import EndlessError, Sandbox
from builder.model.remembered import remembered
from builder.sums import sum_of_files
from builder.words.say import fill, spoken

OURS = "ours"
_ENDLESS = "this line goes on without end, as what takes in itself does, or makes more than any document can show"
# Styles that a studio adds: to ours on every page, and on every sheet but labels.
OWN_SCREEN, OWN_PAPER = "own.css", "own-paper.css"


@dataclass(frozen=True)
class TemplateFault:
    """What is wrong in a template of the studio: a name that is unknown, a template that is missing, or what the library says of it.

    `line` counts from 1; 0 where it is about the file as a whole. `columns` are the first column and the width of what is to be marked.
    `endless`: it came to no end, whatever it was filled in with.
    """

    template: str
    line: int
    said: str = ""
    unknown: str = ""
    missing: str = ""
    known: tuple[str, ...] = ()
    columns: tuple[int, ...] = ()
    endless: bool = False


class TemplateFaultError(Exception):
    """A template of the studio cannot be filled in."""

    def __init__(self, fault: TemplateFault) -> None:
        """Take what is wrong."""
        super().__init__(fault)
        self.fault = fault


class _UnknownNameError(UndefinedError):
    def __init__(self, name: str, holder: object, message: str) -> None:
        super().__init__(message)
        self.name = name
        self.known = tuple(field.name for field in fields(holder)) if is_dataclass(holder) else () if holder is not missing else ("view",)


class _Refusing(StrictUndefined):
    """A name that is not there: whatever is done with it, the error knows the name and what is there instead."""

    def __init__(self, hint: str | None = None, obj: Any = missing, name: Any = None, exc: Any = None) -> None:  # noqa: ARG002
        super().__init__(hint, obj, name, partial(_UnknownNameError, str(name), obj))  # type: ignore[arg-type]


def _say(message: str, /, **values: object) -> Markup:
    return _as_html(spoken().gettext(message), values)


def _say_in(context: str, message: str, /, **values: object) -> Markup:
    return _as_html(spoken().pgettext(context, message), values)


def _say_count(one: str, many: str, count: int, /, **values: object) -> Markup:
    return _as_html(spoken().ngettext(one, many, count), {"count": count} | values)


def _as_html(translated: str, values: dict[str, object]) -> Markup:
    """Fill in a message, which is plain text; of the values those that are HTML already stay as they are."""
    return Markup(fill(escape(translated), {name: escape(value) for name, value in values.items()}))


class _Compiled(BytecodeCache):
    """What templates were compiled to, for the next edition of the same process: the library knows each by its name and its text."""

    def __init__(self) -> None:
        self._known: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        if bucket.key in self._known:
            bucket.bytecode_from_string(self._known[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        self._known[bucket.key] = bucket.bytecode_to_string()


_COMPILED = _Compiled()
# What templates that ship were read to, by their text and name, for the next edition of the same process.
_TREES: dict[tuple[str, str], nodes.Template] = {}


class Templates:
    """The templates of a run. Of two with one name the first folder's counts, so that a studio can put its own in place of ours.

    Those of the same folders are equal as long as no file in there changes. They are kept for another run only where none has changed.
    """

    def __init__(self, layout_folders: Sequence[Path], made_of: str = "") -> None:
        """Look for templates in these folders, in this order: the last is the library's, those before it are the studio's.

        `made_of` is the sum of their files.
        """
        *own, library = layout_folders
        self._folders, self._made_of = tuple(layout_folders), made_of or _sum_of(layout_folders)
        self._own_folders, self._library = own, library
        self.own = tuple(name for name in FileSystemLoader(own).list_templates() if name.endswith(".html"))
        self.of_library = frozenset(FileSystemLoader(library).list_templates())
        self._trees: dict[str, nodes.Template] = {}
        self._faults: dict[str, TemplateFault | None] = {}
        self._files = {str(folder / name): name for folder in reversed(own) for name in self.own if (folder / name).is_file()}
        self._environment = Sandbox(
            loader=ChoiceLoader(
                [
                    FileSystemLoader(list(layout_folders), encoding="utf-8"),
                    PrefixLoader({OURS: FileSystemLoader(library, encoding="utf-8")}),
                ]
            ),
            autoescape=True,
            undefined=_Refusing,
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
            bytecode_cache=_COMPILED,
            auto_reload=False,  # in one run nobody changes them
        )
        self._environment.globals |= {"say": _say, "say_in": _say_in, "say_count": _say_count}

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Templates) and (self._folders, self._made_of) == (other._folders, other._made_of)

    def __hash__(self) -> int:
        return hash(self._made_of)

    def __reduce__(self) -> tuple[type["Templates"], tuple[tuple[Path, ...], str]]:
        """Return what makes them again. Raises PicklingError where a file has changed since they were looked for."""
        if _sum_of(self._folders) != self._made_of:
            raise PicklingError
        return Templates, (self._folders, self._made_of)

    def render(self, name: str, view: object) -> str:
        """Fill in one template; it sees its view under the name `view` alone. Raises TemplateFaultError for one of the studio's."""
        self._environment.begin()
        try:
            return self._environment.get_template(name).render(view=view)
        except Exception as error:
            lines = [(frame.f_code.co_filename, line) for frame, line in walk_tb(error.__traceback__)]
            at = next(((self._files[file], line) for file, line in reversed(lines) if file in self._files), None)
            if at is None:
                raise
            fault = _fault(*at, error)
            raise TemplateFaultError(self._on_line(fault, fault.unknown)) from error

    def source(self, name: str) -> str:
        """Return the text of a file of the layouts as it stands, such as a stylesheet."""
        assert self._environment.loader is not None
        return self._environment.loader.get_source(self._environment, name)[0]

    def has(self, name: str) -> bool:
        """Tell whether there is a template of a name."""
        return name in self.own or name.removeprefix(f"{OURS}/") in self.of_library

    @property
    def library(self) -> "Templates":
        """Return the library's templates alone."""
        return Templates((self._library,))

    def own_style(self, name: str) -> str:
        """Return the text of a style that the studio adds to ours; empty where it has none."""
        return next((path.read_text(encoding="utf-8", errors="replace") for path in self._own_styles(name)), "")

    def own_styles(self, name: str) -> tuple[str, ...]:
        """Return the name of a style that the studio adds to ours, where it has one."""
        return (name,) if any(self._own_styles(name)) else ()

    def own_style_texts(self) -> Iterator[tuple[str, str]]:
        """Yield each style of the studio with its text, those in place of ours too."""
        for path in sorted(path for folder in self._own_folders for path in folder.glob("styles/*.css") if path.is_file()):
            yield f"styles/{path.name}", path.read_text(encoding="utf-8", errors="replace")

    def _own_styles(self, name: str) -> Iterator[Path]:
        return (path for folder in self._own_folders if (path := folder / "styles" / name).is_file())

    def fault_in(self, name: str) -> TemplateFault | None:
        """Find what is wrong in a template without filling it in: it cannot be read, or asks for another that is not there."""
        if name not in self._faults:
            self._faults[name] = self._fault_in(name)
        return self._faults[name]

    def _fault_in(self, name: str) -> TemplateFault | None:
        unreadable = self._unreadable(name)
        if unreadable:
            return unreadable
        tree = self._tree(name)
        asked = [(line, other) for line, other in _referenced(tree) if not self.has(other)]
        known = (*self.own, *sorted(self.of_library))
        missing = next((self._on_line(TemplateFault(name, line, missing=other, known=known), other) for line, other in asked), None)
        # What of ours a frame of the studio's leaves out is the studio's to choose; that no safety goes with it, is tried.
        return missing or (self._block_of_nothing(name, tree) if name in self.own else None)

    def _unreadable(self, name: str) -> TemplateFault | None:
        try:
            self._tree(name)
            self._environment.get_template(name)
        except TemplateSyntaxError as error:
            return self._on_line(TemplateFault(name, error.lineno, _in_words(error.message or "")))
        except UnicodeDecodeError:
            return TemplateFault(name, 0, "it is not saved as UTF-8")
        except (RecursionError, SyntaxError):
            return TemplateFault(name, 0, "too much in it stands within one another, such as brackets in brackets or loops in loops")
        return None

    def _block_of_nothing(self, name: str, tree: nodes.Template) -> TemplateFault | None:
        """Find a block that what a template extends has not, so that it would be shown nowhere."""
        known = self._blocks_above(tree)
        for block in tree.body:
            if known and isinstance(block, nodes.Block) and block.name not in known:
                there = f'there is no block "{block.name}" in what it extends, so that nothing would show it; there are: {", ".join(known)}'
                return self._on_line(TemplateFault(name, block.lineno, there), block.name)
        return None

    def _blocks_above(self, tree: nodes.Template) -> tuple[str, ...]:
        """Return the blocks of all that a template extends, the nearest first; none where it extends nothing that can be read."""
        blocks: dict[str, None] = {}
        met: list[str] = []
        while (above := self._extended(tree)) and above not in met:
            met.append(above)
            tree = self._tree(above)
            blocks |= dict.fromkeys(block.name for block in tree.find_all(nodes.Block))
        return tuple(blocks)

    def _extended(self, tree: nodes.Template) -> str:
        """Return what a template extends; empty where that cannot be read."""
        written = (one.template.value for one in tree.find_all(nodes.Extends) if isinstance(one.template, nodes.Const))
        return next((name for name in written if self.has(name) and not self._unreadable(name)), "")

    def used_by(self, name: str) -> tuple[str, ...]:
        """Return a template and every other of which something goes into it."""
        found = [name]
        for one in found:
            if self.has(one) and self.fault_in(one) is None:
                found += [other for _, other in _referenced(self._tree(one)) if other not in found]
        return tuple(found)

    def _tree(self, name: str) -> nodes.Template:
        assert self._environment.loader is not None
        if name not in self._trees:
            source, file, _ = self._environment.loader.get_source(self._environment, name)
            self._trees[name] = tree = _TREES.get((source, name)) or self._environment.parse(source, name, file)
            if name in self.of_library and name not in self.own:
                _TREES[source, name] = tree
        return self._trees[name]

    def _on_line(self, fault: TemplateFault, marked: str = "") -> TemplateFault:
        """Add which part of its line is to be marked: some words in it, or all of it."""
        file = next(file for file, name in self._files.items() if name == fault.template)
        lines = Path(file).read_text(encoding="utf-8").splitlines()
        line = lines[fault.line - 1] if 0 < fault.line <= len(lines) else ""
        marked = marked if marked in line else ""
        return replace(fault, columns=(line.find(marked or line.strip()) + 1, len(marked or line.strip()) or 1))


def _sum_of(folders: Sequence[Path]) -> str:
    """Return the sum of all files of some folders; where they cannot all be told (a link may lead anywhere), one that no others have."""
    return " ".join(f"{folder} {sum_of_files(folder) or token_hex()}" for folder in folders if folder.is_dir())


def _fault(template: str, line: int, error: Exception) -> TemplateFault:
    if isinstance(error, _UnknownNameError):
        return TemplateFault(template, line, unknown=error.name, known=error.known)
    if isinstance(error, EndlessError | RecursionError | MemoryError):
        return TemplateFault(template, line, _ENDLESS, endless=True)
    return TemplateFault(template, line)


def _in_words(message: str) -> str:
    """Return what the library says of a line that it cannot read; of what is never closed in our words."""
    never_closed = re.search(r"needs to be closed is '(\w+)'", message)
    return f'"{never_closed[1]}" has been begun and is not ended yet' if never_closed else message.rstrip(".")


@remembered(256)
def _referenced(tree: nodes.Template) -> list[tuple[int, str]]:
    """Return the templates that one asks for by a name that is written out, each with the line in which it asks."""
    asks = nodes.Extends | nodes.Include | nodes.Import | nodes.FromImport
    asked = ((node.lineno, node.template) for node in tree.find_all(nodes.Stmt) if isinstance(node, asks))
    return [(line, template.value) for line, template in asked if isinstance(template, nodes.Const)]
