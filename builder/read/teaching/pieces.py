"""The tokens of a block become finished HTML with holes: for amounts, for pictures, and for the addresses of our own pages."""

import re
from dataclasses import dataclass, field
from html import escape

from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.picture import DECORATIVE, heard
from builder.model.place import Name, Place
from builder.model.teaching.lesson import DrawingHole, LinkHole, LinkTo, Mention, PictureHole, Piece
from builder.model.teaching.prose import RunningText, Sentence, sentences_of
from builder.read.teaching.braces import BEFORE_A_COLON, DRAWING, divide_brace
from builder.read.text.markdown import Token, render_token
from builder.read.text.text_error import quoted
from builder.read.text.text_lines import TextLines
from builder.words.nearest import did_you_mean
from builder.words.outward import is_outward

FINDS = (
    FindingKind("brace-empty", STOP, "Braces hold no name."),
    FindingKind("brace-out-of-place", STOP, "Braces stand where nothing can be filled in."),
    FindingKind("brace-unclosed", STOP, "A brace is not closed, or closes nothing."),
    FindingKind("html-in-text", CAUTION, "HTML stands in a text, and is shown as it is written."),
    FindingKind("link-unknown-kind", STOP, "A link leads to an address that no page can lead to."),
    FindingKind("picture-from-elsewhere", STOP, "A picture does not lie beside the text that shows it."),
    FindingKind("picture-without-alt", STOP, "A picture has no description for those who cannot see it, and is not said to be decorative."),
)

_FROM_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//|/", re.IGNORECASE)


def plain_text(inline: Token) -> str:
    """Return the words of a heading or of a picture's description."""
    shown = ("text", "code_inline", "html_as_text", "brace", "brace_unclosed", "brace_unopened")
    parts = (
        " " if child.type in ("softbreak", "hardbreak") else child.content if child.type in shown else "" for child in inline.children or []
    )
    return "".join(parts).strip()


@dataclass
class PieceWriter:
    """Collects the pieces of one block, and what is wrong in it. `in_step`: it is a step, before whose words its drawings stand."""

    lines: TextLines
    findings: list[Finding]
    pieces: list[Piece] = field(default_factory=list)
    html_found: bool = False
    texts: list[RunningText] = field(default_factory=list)
    in_step: bool = False
    drawn: list[DrawingHole] = field(default_factory=list)

    def write(self, tokens: list[Token]) -> tuple[Piece, ...]:
        """Return the pieces of a run of block tokens."""
        cell_after: int | None = None
        for index, token in enumerate(tokens):
            if token.type == "inline":
                text = self.lines.of_text(token) if cell_after is None else self.lines.of_cell(token, cell_after)
                self.texts.append(text)
                cell_after = None if cell_after is None else text.places[0].column - 1 + len(token.content)
                children = token.children or []
                for number, child in enumerate(children):
                    self._inline(text, children, number, child)
            else:
                if token.tag == "tr":
                    cell_after = 0 if token.nesting == 1 else None
                _align_by_class(token)
                self._html(render_token(tokens, index))
        return (*self.drawn, *self.pieces)

    def drawings(self, run: list[Token]) -> tuple[Piece, ...]:
        """Return the drawings of a paragraph that holds nothing else."""
        self.in_step = True
        self.write(run)
        return tuple(self.drawn)

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        """Return what has been written, as sentences."""
        return tuple(sentence for text in self.texts for sentence in sentences_of(text))

    def refuse_braces(self, inline: Token, where: str) -> None:
        """Find braces where nothing is filled in."""
        text = self.lines.of_text(inline)
        for child in inline.children or []:
            if child.type == "brace":
                wrong = f"Braces stand in {where}, where no amount can be filled in."
                self._stop("brace-out-of-place", _place(text, child), wrong, r"Write the words without braces, or \{ for a brace.")

    def _inline(self, text: RunningText, children: list[Token], number: int, token: Token) -> None:
        match token.type:
            case "brace":
                self._brace(_place(text, token), token.content)
            case "image":
                self._picture(_place(text, token), token)
            case "link_open":
                self._link(_place(text, token), token, children, number)
            case "brace_unclosed" | "brace_unopened":
                wrong = "This brace is not closed." if token.type == "brace_unclosed" else "This brace closes nothing."
                remedy = r"Write the name of an amount between { and }, or \{ and \} where a brace is meant."
                self._stop("brace-unclosed", _place(text, token), wrong, remedy)
            case "html_as_text":
                self._html_as_text(_place(text, token))
                self._html(render_token(children, number))
            case _:
                self._html(render_token(children, number))

    def _brace(self, place: Place, written: str) -> None:
        word, name = divide_brace(written)
        if word and word not in BEFORE_A_COLON:
            remedy = f"Write one of these before a colon: {', '.join(BEFORE_A_COLON)}.{did_you_mean(word, BEFORE_A_COLON)}"
            self._stop("word-unknown", place, f"{quoted(word)} has no meaning before a colon in braces.", remedy)
        elif not name:
            missing = f"of the {word} " if word else "of an amount "
            self._stop("brace-empty", place, "No name stands in these braces.", f"Write the name {missing}in them.")
        elif word == DRAWING and self.in_step:
            self.drawn.append(DrawingHole(Name(name, place)))
        elif word == DRAWING:
            wrong = "A drawing cannot stand inside other text."
            remedy = "Put it at the end of a step, or in a paragraph of its own, with an empty line before and after it."
            self._stop("brace-out-of-place", place, wrong, remedy)
        elif word:
            wrong = "A caution or a passage cannot stand inside other text."
            remedy = "Put it in a paragraph of its own, outside lists and tables, with an empty line before and after it."
            self._stop("brace-out-of-place", place, wrong, remedy)
        else:
            self.pieces.append(Mention(Name(name, place)))

    def _html_as_text(self, place: Place) -> None:
        if not self.html_found:
            wrong = "This looks like HTML, which cannot be used here; it is shown as it is written."
            self.findings.append(caution("html-in-text", place, wrong, "Use Markdown: *emphasis*, **strong**, lists, tables."))
        self.html_found = True

    def _picture(self, place: Place, token: Token) -> None:
        source, alt = str(token.attrs["src"]), plain_text(token)
        if any(child.type.startswith("brace") for child in token.children or []):
            self._stop("brace-out-of-place", place, "Braces stand in the description of a picture.", "Describe it without amounts.")
        if not alt:
            remedy = (
                "Write between the square brackets what the picture shows; "
                f'or "{DECORATIVE}", where it says nothing that the text does not say.'
            )
            self._stop("picture-without-alt", place, "This picture has no description for those who cannot see it.", remedy)
        if _FROM_ELSEWHERE.match(source):
            remedy = "Put a copy of the picture beside the lesson and name its file."
            self._stop("picture-from-elsewhere", place, "A picture must lie beside the text that shows it.", remedy)
            return
        self.pieces.append(PictureHole(Name(source, place), heard(alt), str(token.attrs.get("title", ""))))

    def _link(self, place: Place, token: Token, children: list[Token], number: int) -> None:
        address = str(token.attrs["href"])
        kind, _, target = address.partition(":")
        to = next((one for one in LinkTo if one == kind), None)
        if to and target:
            self._html('<a href="')
            self.pieces.append(LinkHole(to, Name(target, place)))
            self._html(f'"{_title(token)}>')
            return
        if not is_outward(address):
            wrong = f'"{address}" is not an address that a page can lead to.'
            remedy = 'Begin it with "https://" or "mailto:", or write "page:NAME" or "class:NAME" for one of your own pages or classes.'
            self._stop("link-unknown-kind", place, wrong, remedy)
            token.attrs.pop("href")
        self._html(render_token(children, number))

    def _stop(self, name: str, place: Place, wrong: str, remedy: str) -> None:
        self.findings.append(stop(name, place, wrong, remedy))

    def _html(self, html: str) -> None:
        if self.pieces and isinstance(self.pieces[-1], str):
            self.pieces[-1] += html
        elif html:
            self.pieces.append(html)


def _place(text: RunningText, token: Token) -> Place:
    return text.place(*token.meta["at"])


def _title(token: Token) -> str:
    return f' title="{escape(str(token.attrs["title"]))}"' if "title" in token.attrs else ""


def _align_by_class(token: Token) -> None:
    """Tell by a class how a cell is aligned; a style inside the page would be refused by its security policy."""
    style = str(token.attrs.pop("style", ""))
    if style.startswith("text-align:"):
        token.attrSet("class", f"align-{style.removeprefix('text-align:')}")
