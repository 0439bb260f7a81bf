"""The door to the Markdown library: a text becomes tokens, and tokens become HTML.

The dialect is CommonMark with tables and without raw HTML, which is shown as the text it is. Two things are our own: braces make
tokens of the type `brace`, and every token that a rule made in running text remembers where it begins and ends, as `at` in its `meta`.
"""

from collections.abc import Callable
from functools import cache

from markdown_it import MarkdownIt
from markdown_it.common.html_re import HTML_TAG_RE
from markdown_it.common.utils import escapeHtml
from markdown_it.renderer import RendererHTML
from markdown_it.rules_inline import StateInline, autolink, image, link
from markdown_it.token import Token

__all__ = ["Token", "parse_markdown", "render_page", "render_token"]

_Rule = Callable[[StateInline, bool], bool]


def parse_markdown(text: str) -> list[Token]:
    """Return the tokens of a text."""
    return _parser().parse(text)


def render_token(tokens: list[Token], index: int) -> str:
    """Return the HTML of one token, with a view of its neighbours."""
    parser = _parser()
    renderer = parser.renderer
    assert isinstance(renderer, RendererHTML)
    token = tokens[index]
    if token.type in renderer.rules:
        return str(renderer.rules[token.type](tokens, index, parser.options, {}))
    return renderer.renderToken(tokens, index, parser.options, {})


def render_page(text: str) -> str:
    """Return the HTML of a text of ours that speaks of no batch, so that braces in it are braces."""
    return str(MarkdownIt("commonmark", {"html": False, "xhtmlOut": False}).enable("table").render(text))


@cache
def _parser() -> MarkdownIt:
    parser = MarkdownIt("commonmark", {"html": False, "xhtmlOut": False}).enable("table")
    # Every link is judged by us, so that none vanishes without a word.
    parser.validateLink = lambda _: True  # type: ignore[assignment,method-assign]
    for name, rule in (("link", link), ("image", image), ("autolink", autolink), ("html_inline", _html_as_text)):
        parser.inline.ruler.at(name, _remembering(rule))
    for name, rule in (("brace", _brace), ("brace_unopened", _brace_unopened)):
        parser.inline.ruler.push(name, _remembering(rule))
    parser.add_render_rule("html_as_text", lambda _self, tokens, index, _options, _env: escapeHtml(tokens[index].content))
    return parser


def _remembering(rule: _Rule) -> _Rule:
    """Make a rule that notes on the tokens it made where in the text it began and ended."""

    def remembering(state: StateInline, silent: bool) -> bool:
        begin, known = state.pos, len(state.tokens)
        matched = rule(state, silent)
        for token in state.tokens[known:]:
            token.meta.setdefault("at", (begin, state.pos))
        return matched

    return remembering


def _brace(state: StateInline, silent: bool) -> bool:
    """Read `{name}`; where no brace closes it, `{` alone."""
    if state.src[state.pos] != "{":
        return False
    again = state.src.find("{", state.pos + 1, state.posMax)
    end = state.src.find("}", state.pos, again if again >= 0 else state.posMax)
    closed = end >= 0
    after = end + 1 if closed else state.pos + 1
    if not silent:
        token = state.push("brace" if closed else "brace_unclosed", "", 0)
        token.content = state.src[state.pos : after]
    state.pos = after
    return True


def _brace_unopened(state: StateInline, silent: bool) -> bool:
    """Read a `}` that no brace has opened."""
    if state.src[state.pos] != "}":
        return False
    if not silent:
        state.push("brace_unopened", "", 0).content = "}"
    state.pos += 1
    return True


def _html_as_text(state: StateInline, silent: bool) -> bool:
    """Read what looks like a tag of HTML as text."""
    match = HTML_TAG_RE.match(state.src, state.pos, state.posMax)
    if not match:
        return False
    if not silent:
        state.push("html_as_text", "", 0).content = match.group()
    state.pos = match.end()
    return True
