"""Lesson text to blocks: Markdown in; HTML with holes, and findings with their places, out."""

from collections.abc import Callable, Iterable, Sequence
from html.parser import HTMLParser
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.finding import Finding
from builder.model.teaching.lesson import CautionHere, Lesson, LinkHole, Mention, PictureHole, Piece, Prose, Steps, Where, Who
from builder.read.known import NamesKnown
from builder.read.teaching.blocks import TextBlock, read_blocks
from builder.read.teaching.lessons import read_lesson
from builder.read.teaching.pages import read_page
from builder.read.teaching.passages import read_passage
from tests.making import sure

EMPTY = ("area", "br", "hr", "img")


class Balanced(HTMLParser):
    """Raises where tags do not close in order."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []

    def handle_starttag(self, tag: str, _: Sequence[object]) -> None:
        if tag not in EMPTY:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def joined(pieces: Iterable[Piece]) -> str:
    fill: dict[type, Callable[[Any], str]] = {
        Mention: lambda p: f"«{p.name}»",
        PictureHole: lambda p: f"«{p.file}, {p.alt}, {p.title}»",
        LinkHole: lambda p: f"«{p.kind}/{p.target}»",
    }
    return "".join(piece if isinstance(piece, str) else fill[type(piece)](piece) for piece in pieces)


def pieces_of(block: TextBlock) -> tuple[Piece, ...]:
    assert isinstance(block, Prose)
    return block.pieces


def html_of(block: TextBlock) -> str:
    return "".join(f"<li>{joined(step.pieces)}</li>" for step in block.steps) if isinstance(block, Steps) else joined(pieces_of(block))


def blocks(text: str) -> tuple[list[TextBlock], list[Finding]]:
    findings: list[Finding] = []
    return read_blocks(text, "classes/a/lesson.md", findings), findings


def lesson(text: str, **passages: tuple[Prose, ...]) -> tuple[Lesson | None, list[Finding]]:
    findings: list[Finding] = []
    return read_lesson(text, "classes/a/lesson.md", passages, findings), findings


def names(findings: Sequence[Finding]) -> list[str]:
    return [finding.name for finding in findings]


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("Weigh {olive oil} of *olive oil*.", "<p>Weigh «olive oil» of <em>olive oil</em>.</p>\n"),
        ("![Decorative](a.svg)", "<p>«a.svg, , »</p>\n"),
        ("**{water phase}**", "<p><strong>«water phase»</strong></p>\n"),
        ("Over {water\nphase} two lines.", "<p>Over «water phase» two lines.</p>\n"),
        (r"A \{brace\} and `{code}`.", "<p>A {brace} and <code>{code}</code>.</p>\n"),
        ("```\n{code}\n```", "<pre><code>{code}\n</code></pre>\n"),
        ("- {a}\n- b\n", "<ul>\n<li>«a»</li>\n<li>b</li>\n</ul>\n"),
        ("Mind 5 < 6 & more.", "<p>Mind 5 &lt; 6 &amp; more.</p>\n"),
        ("### Inside", "<h3>Inside</h3>\n"),
        ("![a jar](jar.svg)", "<p>«jar.svg, a jar, »</p>\n"),
        ('![a "jar" & lid](jar.svg "Ti\\"tle")', '<p>«jar.svg, a "jar" & lid, Ti"tle»</p>\n'),
        ("[see *here*](page:about)", '<p><a href="«page/about»">see <em>here</em></a></p>\n'),
        ("[see](class:first-bar)", '<p><a href="«class/first-bar»">see</a></p>\n'),
        ("[see](https://example.org/a?b=1&c=2)", '<p><a href="https://example.org/a?b=1&amp;c=2">see</a></p>\n'),
        ("<mailto:a@example.org>", '<p><a href="mailto:a@example.org">mailto:a@example.org</a></p>\n'),
        ("[up](#top)", '<p><a href="#top">up</a></p>\n'),
        ("line  \nbreak", "<p>line<br>\nbreak</p>\n"),
        ("---", "<hr>\n"),
        ("1. Melt {batch}.\n2. Pour.\n", "<li>Melt «batch».</li><li>Pour.</li>"),
        ("1. Melt.\n\n   Wait.\n2. Pour.\n", "<li><p>Melt.</p>\n<p>Wait.</p>\n</li><li><p>Pour.</p>\n</li>"),
        ("1. Melt:\n   - a\n   - {b}\n", "<li>Melt:\n<ul>\n<li>a</li>\n<li>«b»</li>\n</ul>\n</li>"),
    ],
)
def test_text_becomes_html_with_holes(text: str, html: str) -> None:
    made, findings = blocks(text)
    assert [html_of(block) for block in made] == [html]
    assert not findings


def test_a_table_says_by_class_how_its_cells_are_aligned() -> None:
    made, findings = blocks("| a | b |\n|--|--:|\n| {x} | 1 |\n")
    html = html_of(made[0])
    assert "<td>«x»</td>" in html and '<td class="align-right">1</td>' in html and "style" not in html
    assert not findings


def test_places_of_what_stands_in_braces() -> None:
    made, _ = blocks("First.\n\n> Take {olive oil}, then\n> stir {batch}{batch}.\n\n| a |\n|--|\n| x {lye} |\n")
    found = [piece.name.place for block in made for piece in pieces_of(block) if isinstance(piece, Mention)]
    assert [(place.line, place.column, place.width) for place in found] == [(3, 8, 11), (4, 8, 7), (4, 15, 7), (8, 5, 5)]


@pytest.mark.parametrize(
    ("text", "name", "spot"),
    [
        ("Take {olive oil and", "brace-unclosed", (1, 6)),
        ("a {b {c} d", "brace-unclosed", (1, 3)),
        ("Take olive} oil", "brace-unclosed", (1, 11)),
        ("Take {} oil", "brace-empty", (1, 6)),
        ("Look: {caution: hot-fat}", "brace-out-of-place", (1, 7)),
        ("1. {caution: hot-fat}", "brace-out-of-place", (1, 4)),
        ("1. Pour.\n{passage: tare}", "brace-out-of-place", (2, 1)),
        ("### For {batch}", "brace-out-of-place", (1, 9)),
        ("![of {batch}](a.svg)", "brace-out-of-place", (1, 1)),
        ("one\n<b>two</b>", "html-in-text", (2, 1)),
        ("<!-- note -->", "html-in-text", (1, 1)),
        ("see [x](javascript:alert(1))", "link-unknown-kind", (1, 5)),
        ("[x](other.html)", "link-unknown-kind", (1, 1)),
        ("[x](page:)", "link-unknown-kind", (1, 1)),
        # A line of nothing but a separator of Unicode belongs to the paragraph, and not to its text.
        ("\u2029\nSee [x](page:)", "link-unknown-kind", (2, 5)),
        ("![](a.svg)", "picture-without-alt", (1, 1)),
        ("![a](https://example.org/a.svg)", "picture-from-elsewhere", (1, 1)),
        ("![a](data:image/svg+xml,x)", "picture-from-elsewhere", (1, 1)),
    ],
)
def test_what_is_wrong_in_a_text(text: str, name: str, spot: tuple[int, int]) -> None:
    _, findings = blocks(text)
    assert findings[0].name == name
    assert (findings[0].place.line, findings[0].place.column) == spot
    assert findings[0].stops == (name != "html-in-text")


def test_html_is_shown_as_text_and_no_address_of_an_unknown_kind_is_kept() -> None:
    made, findings = blocks("<b>bold</b> <script>x</script> [x](javascript:alert(1))")
    html = html_of(made[0])
    assert "<b>" not in html and "<script" not in html and "javascript" not in html
    assert "&lt;script&gt;" in html
    assert names(findings) == ["html-in-text", "link-unknown-kind"]


LESSON = """\
# A *plain* bar

For the {nobody}.

1. First this.
2. Then that.

## Weigh (ahead, 15 min)

Weigh it.

## Mix the lye (teacher, 1 h 5 min, class only)

{caution: caustic}

1. Stir {lye}.

Wait.

{passage: tare-the-cup}

## Cure (Students, 30 min, home only, plain-bar)

### Where

- dry
"""


def test_a_lesson() -> None:
    tare = Prose(("<p>Tare.</p>\n",))
    read, findings = lesson(LESSON, **{"tare-the-cup": (tare,)})
    assert not findings
    assert sure(read).title == "A plain bar"
    assert [type(block) for block in sure(read).introduction] == [Prose, Prose]
    assert html_of(sure(read).introduction[1]) == "<ol>\n<li>First this.</li>\n<li>Then that.</li>\n</ol>\n"
    weigh, lye, cure = sure(read).parts
    assert (weigh.title, weigh.who, weigh.minutes, weigh.where, weigh.recipe) == ("Weigh", Who.AHEAD, 15, Where.EVERYWHERE, None)
    assert (lye.who, lye.minutes, lye.where) == (Who.TEACHER, 65, Where.CLASS_ONLY)
    assert [type(block) for block in lye.blocks] == [CautionHere, Steps, Prose, Prose]
    caution = lye.blocks[0]
    assert isinstance(caution, CautionHere) and caution.name.text == "caustic" and caution.name.place.line == 14
    assert lye.blocks[3] is tare
    assert (cure.who, cure.where, sure(cure.recipe).text) == (Who.STUDENTS, Where.HOME_ONLY, "plain-bar")
    assert cure.place.line == 22
    assert [mention.name.text for mention in lye.mentions] == ["lye"]


@pytest.mark.parametrize(
    ("heading", "name", "remedy"),
    [
        ("Stir", "part-without-who", "(students, 15 min)"),
        ("(students, 15 min)", "part-without-who", "(students, 15 min)"),
        ("Stir (student, 15 min)", "who-unknown", 'Did you mean "students"?'),
        ("Stir (students)", "minutes-unreadable", "15 min"),
        ("Stir (students, 15)", "minutes-unreadable", "15 min"),
        ("Stir (students, 90 g)", "minutes-unreadable", "15 min"),
        ("Stir (students, 1/7 min)", "minutes-unreadable", "15 min"),
        ("Stir (students, 5 min, class onyl)", "word-unknown", 'Did you mean "class only"?'),
        ("Stir (students, 5 min, class only, home only)", "part-heading-unclear", "two parts"),
        ("Stir (students, 5 min, a-scrub, b-scrub)", "part-heading-unclear", "two parts"),
        ("Stir {batch} (students, 5 min)", "brace-out-of-place", r"\{"),
    ],
)
def test_headings_of_parts_that_say_too_little(heading: str, name: str, remedy: str) -> None:
    read, findings = lesson(f"# T\n\n## {heading}\n\nText.\n")
    assert names(findings) == [name]
    assert remedy in findings[0].remedy
    assert findings[0].place.line == 3
    assert read is None or name == "brace-out-of-place"


def test_one_fault_hides_no_other() -> None:
    read, findings = lesson("Text {a.\n\n## One\n\n{passage: tare}\n\n## Two (nobody, soon)\n\n# Again\n", tares=())
    assert read is None
    assert sorted(names(findings)) == [
        "brace-unclosed",
        "heading-out-of-place",
        "lesson-title-missing",
        "minutes-unreadable",
        "part-without-who",
        "passage-unknown",
        "who-unknown",
    ]
    assert any('Did you mean "tares"?' in finding.remedy for finding in findings)


def test_a_page_has_headings_of_its_own() -> None:
    findings: list[Finding] = []
    page = read_page("# About\n\n## Where & when\n\n1. a\n", "pages/about.md", findings)
    assert (sure(page).key, sure(page).title) == ("about", "About")
    assert "".join(html_of(block) for block in sure(page).blocks) == "<h2>Where &amp; when</h2>\n<ol>\n<li>a</li>\n</ol>\n"
    assert not findings
    assert read_page("Text.", "pages/x.md", findings) is None
    assert names(findings) == ["page-title-missing"]


def test_a_passage_counts_its_lines_below_its_head() -> None:
    findings: list[Finding] = []
    text = "---\nname: Tare\nreviewed: 2026-11-25\nsource: nobody\n---\nSet to {zero.\n\n## Title\n\n{passage: other}\n"
    assert len(read_passage(text, "content/passages/tare.md", NamesKnown(), findings)) == 1
    assert [(finding.name, finding.place.line) for finding in findings] == [
        ("source-unknown", 4), ("brace-unclosed", 6), ("heading-out-of-place", 8), ("brace-out-of-place", 10),
    ]  # fmt: skip


@given(st.text(alphabet="{}[]()!<>`*_#-|1.\\ \nab:\"&'", max_size=60))
def test_any_text_gives_well_formed_html(text: str) -> None:
    made, _ = blocks(text)
    for block in made:
        if isinstance(block, (Prose, Steps)):
            checker = Balanced()
            checker.feed(html_of(block))
            assert not checker.open
