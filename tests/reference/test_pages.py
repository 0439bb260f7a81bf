"""The pages of the reference: complete, linked, and true of the code that they tell of."""

import json
import re
from pathlib import Path

import pytest

from builder import cli
from builder.compose.recipe.wording import RULES
from builder.finding_kinds import finding_kinds
from builder.library import CONTENT, LAYOUTS
from builder.model.dose.limit import Field, LimitWeight
from builder.model.teaching.lesson import Where, Who
from builder.read.dose.essential_oils import ConstituentRow
from builder.read.dose.limits import ColourRow, FieldRow, LimitRow
from builder.reference import find_page, pages, reference_publication
from builder.reference.page import Page
from builder.reference.pages import TOPICS
from builder.terminal.reference import plain_lines
from tests.making import sure
from tests.test_readme import README, lay_out

PAGES = {page.key: page for page in pages()}
TOLD = "\n".join(PAGES[key].text for key in TOPICS)
COMMANDS = (
    "start", "add", "check", "preview", "publish", "label", "weigh", "plan", "shop", "list", "card", "explain", "guide", "reference",
    "editor", "completion",
)  # fmt: skip
THINGS = ("recipe", "class", "date", "card", "container", "language")


def block(page: str, begins: str) -> str:
    """Return the example of a page that begins with some words."""
    found: list[str] = re.findall(r"^```\w+\n(.*?)^```$", PAGES[page].text, flags=re.DOTALL | re.MULTILINE)
    return next(text for text in found if text.startswith(begins))


def check(folder: Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    status = cli.main(["check", str(folder), "--today", "2027-01-02"])
    printed = capsys.readouterr()
    return status, printed.out, printed.err


def test_every_text_that_ships_is_a_page() -> None:
    assert {path.stem for path in (CONTENT / "reference").glob("*.md")} == set(TOPICS)


def test_every_page_has_a_name_and_a_title_of_its_own() -> None:
    assert len(PAGES) == len(pages())
    assert len({page.title for page in pages()}) == len(pages())
    assert all(page.text.startswith("# ") for page in pages())


@pytest.mark.parametrize("page", pages(), ids=lambda page: page.key)
def test_links_lead_to_pages(page: Page) -> None:
    assert [link for link in re.findall(r"\]\(([^)]+)\.html\)", page.text) if link not in PAGES] == []


def test_the_list_names_every_page() -> None:
    assert [key for key in PAGES if key != "index" and f"[{key}]({key}.html)" not in PAGES["index"].text] == []


def test_the_commands_told_of_are_those_that_exist(capsys: pytest.CaptureFixture[str]) -> None:
    told = set(re.findall(r"`stillroom (\w+)", TOLD)) | set(
        re.findall(r"\bstillroom (\w+)\b", "\n".join(re.findall(r"^    .*$", README, re.M)))
    )
    assert told == set(COMMANDS)
    for command in COMMANDS:
        with pytest.raises(SystemExit) as end:
            cli.main([command, "--help"])
        assert end.value.code == 0
    with pytest.raises(SystemExit):
        cli.main(["--help"])
    listed = re.findall(r"^    (\w+)\b", capsys.readouterr().out, re.M)
    assert set(COMMANDS) <= set(listed)


def test_the_options_told_of_are_those_that_exist(capsys: pytest.CaptureFixture[str]) -> None:
    for command in COMMANDS:
        with pytest.raises(SystemExit):
            cli.main([command, "--help"])
    for words in ([], *(["add", thing] for thing in THINGS)):
        with pytest.raises(SystemExit):
            cli.main([*words, "--help"])
    exist = set(re.findall(r"--[a-z-]+", capsys.readouterr().out))
    assert set(re.findall(r"(?<=[` ])--[a-z-]+", PAGES["commands"].text)) <= exist
    assert exist - {"--help"} <= set(re.findall(r"--[a-z-]+", PAGES["commands"].text))


def test_every_key_of_the_json_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lay_out(tmp_path)
    cli.main(["weigh", str(tmp_path), "orchard-bar", "--oils", "1 kg", "--json", "--today", "2027-01-02"])
    batch = json.loads(capsys.readouterr().out)
    cli.main(["weigh", str(tmp_path), "orchard-bar", "--class", "first-bar", "--json", "--today", "2027-01-02"])
    of_class = json.loads(capsys.readouterr().out)
    keys = {*batch, *of_class, *(f"batch.{key}" for key in batch["batch"]), *of_class["product"]}
    assert {key for key in keys if f"`{key}`" not in PAGES["json"].text} == set()
    told = set(re.findall(r"^- `(batch\.[^`]+)`(?:, `([^`]+)`)?:", PAGES["json"].text, re.M))
    assert {key for pair in told for key in pair if key.startswith("batch.")} == {key for key in keys if key.startswith("batch.")}


def test_every_column_of_a_table_is_told() -> None:
    rows = (LimitRow, ColourRow, FieldRow, ConstituentRow)
    columns = [name for row in rows for name in row.headings()[1]]
    assert [name for name in columns if f"`{name}`" not in PAGES["tables"].text] == []
    words = re.sub(r"\s+", " ", PAGES["tables"].text)
    assert [word for word in (*LimitWeight, *Field) if word not in words] == []


def test_who_and_where_of_a_part_are_told() -> None:
    told = PAGES["lessons"].text
    assert [word for word in Who if f"`{word}`" not in told] == []
    assert [word for word in Where if word is not Where.EVERYWHERE and f"`{word}`" not in told] == []


def test_every_finding_and_every_sum_is_told() -> None:
    assert [name for name in finding_kinds() if f"**{name}**" not in PAGES["findings"].text] == []
    assert [words for words in RULES.values() if words not in PAGES["sums"].text] == []


def test_regions_are_told() -> None:
    regions = re.findall(r"^(\w+):$", (CONTENT / "regions.yaml").read_text(encoding="utf-8"), re.M)
    assert len(regions) > 3
    region = next(line for line in PAGES["studio.yaml"].text.splitlines() if line.startswith("- **region**"))
    assert [name for name in regions if name not in region] == []


def test_supplies_are_read_without_a_finding(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lay_out(tmp_path, **{"shelf/supplies.yaml": block("buying", "- {ingredient: lotion base")})
    status, out, _ = check(tmp_path, capsys)
    assert (status, "Nothing found" in out) == (0, True)


def test_stock_is_read_and_taken_off(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    gloves = "- {item: nitrile gloves, pack: 100, price: 12.50, each student: 2}\n"
    lay_out(tmp_path, **{"inventory.yaml": block("buying", "- {ingredient: olive oil, have:"), "shelf/supplies.yaml": gloves})
    assert cli.main(["shop", str(tmp_path), "--today", "2027-01-02"]) == 0
    assert re.search(r"Nitrile gloves +10 +60 +nothing +50", capsys.readouterr().out)


def test_a_card_of_the_studio_is_read_without_a_finding(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    card, source = block("figures", "name: Olive oil"), block("figures", "our-supplier:")
    lay_out(tmp_path, **{"shelf/ingredients/olive-oil.yaml": card, "shelf/sources.yaml": source})
    status, _, err = check(tmp_path, capsys)
    assert (status, err) == (0, "")


def test_own_kinds_containers_and_sheets_are_read_without_a_finding(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    more = {
        "shelf/products.yaml": block("cards", "body mist:"),
        "shelf/label_sheets.yaml": block("labels", "our rounds:"),
        "shelf/containers.yaml": block("labels", "4 oz jar:"),
    }
    lay_out(tmp_path, **more)
    status, _, err = check(tmp_path, capsys)
    assert (status, err) == (0, "")


def test_what_a_studio_says_of_labels_and_teaching_is_read_without_a_finding(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    labels, _, _ = block("labels", "labels:").partition("dates:")
    lay_out(tmp_path)
    studio = (tmp_path / "studio.yaml").read_text(encoding="utf-8")
    (tmp_path / "studio.yaml").write_text(f"{studio}{labels}{block('watching', 'teaching policy:')}", encoding="utf-8")
    status, _, err = check(tmp_path, capsys)
    assert (status, err) == (0, "")


def test_a_page_is_found_by_its_name_and_by_the_path_of_a_file() -> None:
    assert sure(find_page("labels")).title == "Labels"
    assert find_page("recipes/orchard-bar.yaml") == find_page("recipe.yaml")
    assert find_page("classes/first-bar/class.yaml") == find_page("class.yaml")
    assert find_page("nothing") is None


def test_the_terminal_shows_no_marks_and_no_line_that_is_too_long() -> None:
    for page in pages():
        shown = list(plain_lines(page.text, 80))
        assert not any("**" in line or "](" in line for line in shown)
        wrapped = [line for line in shown if not line.startswith("    ")]
        assert max(len(line) for line in wrapped if " " in line.strip("- ")) <= 80


def test_the_terminal_shows_a_table_in_columns() -> None:
    narrow = "| oil | g |\n|---|---|\n| [olive](x.html) | 650 |\n| shea | |\n\nText."
    assert list(plain_lines(narrow, 80)) == ["oil    g", "olive  650", "shea", "", "Text.", ""]
    assert list(plain_lines("| a long cell | another cell |", 20)) == ["a long cell |", "  another cell", ""]


def test_the_terminal_keeps_examples_as_they_are() -> None:
    assert "    - {item: nitrile gloves, have: 60, counted: 2026-11-21}" in list(plain_lines(PAGES["buying"].text, 80))


def test_web_pages_hold_what_the_terminal_shows(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["reference", "--to", str(tmp_path / "out")]) == 0
    site = tmp_path / "out" / "site"
    assert {path.name for path in site.glob("*.html")} == {f"{key}.html" for key in PAGES}
    for path in site.glob("*.html"):
        html = path.read_text(encoding="utf-8")
        links = [link for link in re.findall(r'(?:href|src)="([^"#]+)"', html) if not link.startswith("#")]
        assert [link for link in links if not (site / link).is_file()] == []
        assert html.count("<h1>") == 1
    assert "<strong>heat to</strong>" in (site / "recipe.yaml.html").read_text(encoding="utf-8")
    assert f"Wrote {len(PAGES)} pages" in capsys.readouterr().out


def test_a_publication_needs_no_studio() -> None:
    publication = reference_publication(LAYOUTS)
    assert {file.origin for file in publication.files} == {"layouts"}
    assert len(publication.documents) == len(PAGES)
