"""The tokens of a block become finished HTML with holes: for amounts, for the addresses of pictures, and for those of our own pages."""

import re
from dataclasses import dataclass, field
from html import escape

from builder.model.finding import Finding, caution, stop
from builder.model.lesson import LinkHole, Mention, PictureHole, Piece
from builder.model.place import Name
from builder.read.markdown import Token, render_token
from builder.read.text_lines import TextLines

_FROM_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//|/", re.IGNORECASE)
_OUTWARD = ("https://", "http://", "mailto:", "#")
_INWARD = ("page", "class")
_STANDING_ALONE = re.compile(r"(passage|caution)\s*:\s*(.*)")


def standing_alone(inline: Token) -> tuple[str, str] | None:
    """Give the word and the name of a paragraph that is only `{passage: NAME}` or `{caution: NAME}`."""
    children = inline.children or []
    if len(children) != 1 or children[0].type != "brace":
        return None
    match = _STANDING_ALONE.fullmatch(children[0].content[1:-1].strip())
    return (match[1], match[2].strip()) if match else None


def plain_text(inline: Token) -> str:
    """Give the words of a heading or of a picture's description."""
    shown = ("text", "code_inline", "html_as_text", "brace", "brace_unclosed", "brace_unopened")
    parts = (
        " " if child.type in ("softbreak", "hardbreak") else child.content if child.type in shown else "" for child in inline.children or []
    )
    return "".join(parts).strip()


@dataclass
class PieceWriter:
    """Collects the pieces of one block, and what is wrong in it."""

    lines: TextLines
    findings: list[Finding]
    pieces: list[Piece] = field(default_factory=list)

    def write(self, tokens: list[Token]) -> tuple[Piece, ...]:
        """Give the pieces of a run of block tokens."""
        for index, token in enumerate(tokens):
            if token.type == "inline":
                children = token.children or []
                for number, child in enumerate(children):
                    self._inline(token, children, number, child)
            else:
                _align_by_class(token)
                self._html(render_token(tokens, index))
        return tuple(self.pieces)

    def refuse_braces(self, inline: Token, where: str) -> None:
        """Find braces where nothing is filled in."""
        for child in inline.children or []:
            if child.type == "brace":
                place = self.lines.within(inline, child.meta["at"], child.content)
                wrong = f"Braces stand in {where}, where no amount can be filled in."
                self.findings.append(stop("brace-out-of-place", place, wrong, r"Write the words without braces, or \{ for a brace."))

    def _inline(self, block: Token, children: list[Token], number: int, token: Token) -> None:
        match token.type:
            case "brace":
                self._mention(block, token)
            case "image":
                self._picture(block, token)
            case "link_open":
                self._link(block, token, children, number)
            case "brace_unclosed" | "brace_unopened":
                wrong = "This brace is not closed." if token.type == "brace_unclosed" else "This brace closes nothing."
                remedy = r"Write the name of an amount between { and }, or \{ and \} where a brace is meant."
                self._stop("brace-unclosed", block, token, token.content, wrong, remedy)
            case "html_as_text":
                wrong = "This looks like HTML, which a lesson cannot use; it is shown as it is written."
                remedy = "Use Markdown: *emphasis*, **strong**, lists, tables."
                place = self.lines.within(block, token.meta["at"], token.content)
                self.findings.append(caution("html-in-text", place, wrong, remedy))
                self._html(render_token(children, number))
            case _:
                self._html(render_token(children, number))

    def _mention(self, block: Token, token: Token) -> None:
        written = token.content
        text = " ".join(written[1:-1].split())
        if not text:
            self._stop("brace-empty", block, token, written, "No name stands in these braces.", "Write the name of an amount in them.")
        elif _STANDING_ALONE.fullmatch(text):
            wrong = "A caution or a passage cannot stand inside other text."
            remedy = "Put it in a paragraph of its own, outside lists and tables, with an empty line before and after it."
            self._stop("brace-out-of-place", block, token, written, wrong, remedy)
        else:
            self.pieces.append(Mention(Name(text, self.lines.within(block, token.meta["at"], written))))

    def _picture(self, block: Token, token: Token) -> None:
        source, alt = str(token.attrs["src"]), plain_text(token)
        written = f"![{token.content}]"
        place = self.lines.within(block, token.meta["at"], written)
        if any(child.type.startswith("brace") for child in token.children or []):
            self.findings.append(
                stop("brace-out-of-place", place, "Braces stand in the description of a picture.", "Describe it without amounts.")
            )
        if not alt:
            remedy = "Write between the square brackets what the picture shows."
            self.findings.append(stop("picture-without-alt", place, "This picture has no description for those who cannot see it.", remedy))
        if _FROM_ELSEWHERE.match(source):
            remedy = "Put a copy of the picture beside the lesson and name its file."
            self.findings.append(stop("picture-from-elsewhere", place, "A picture must lie beside the text that shows it.", remedy))
        title = f' title="{escape(str(token.attrs["title"]))}"' if "title" in token.attrs else ""
        self._html('<img src="')
        self.pieces.append(PictureHole(Name(source, place), alt))
        self._html(f'" alt="{escape(alt)}"{title}>')

    def _link(self, block: Token, token: Token, children: list[Token], number: int) -> None:
        address = str(token.attrs["href"])
        kind, _, target = address.partition(":")
        if kind in _INWARD and target:
            title = f' title="{escape(str(token.attrs["title"]))}"' if "title" in token.attrs else ""
            self._html('<a href="')
            self.pieces.append(LinkHole(kind, Name(target, self.lines.within(block, token.meta["at"], address))))
            self._html(f'"{title}>')
            return
        if not address.startswith(_OUTWARD):
            wrong = f'"{address}" is not an address that a page can lead to.'
            remedy = 'Begin it with "https://" or "mailto:", or write "page:NAME" or "class:NAME" for one of your own pages or classes.'
            self._stop("link-unknown-kind", block, token, address, wrong, remedy)
            token.attrs.pop("href")
        self._html(render_token(children, number))

    def _stop(self, name: str, block: Token, token: Token, written: str, wrong: str, remedy: str) -> None:
        self.findings.append(stop(name, self.lines.within(block, token.meta["at"], written), wrong, remedy))

    def _html(self, html: str) -> None:
        if self.pieces and isinstance(self.pieces[-1], str):
            self.pieces[-1] += html
        elif html:
            self.pieces.append(html)


def _align_by_class(token: Token) -> None:
    """Say by a class how a cell is aligned; a style inside the page would be refused by its security policy."""
    style = str(token.attrs.pop("style", ""))
    if style.startswith("text-align:"):
        token.attrSet("class", f"align-{style.removeprefix('text-align:')}")
