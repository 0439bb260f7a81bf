"""The example studio as it comes out: sound, linked up, in our fonts, and with the same amounts in every document."""

import re
import shutil
from decimal import Decimal
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import page as ua1
import pytest
import yaml

from tests.making import sure
from tests.page_text import text_of
from tests.published import (
    EXAMPLE,
    composed_for,
    html_text,
    pages,
    pdf_fonts,
    pdf_pages,
    pdf_small_text,
    pdf_text,
    pdfs,
    published,
    run,
    sheet_text,
    sheets,
    sheets_pressed,
    soup,
    squeeze,
    weighed,
)

CLASSES = {
    path.parent.name: yaml.load(path.read_text(encoding="utf-8"), yaml.CBaseLoader) for path in sorted(EXAMPLE.glob("classes/*/class.yaml"))
}
PRODUCTS = [(key, recipe) for key, one in CLASSES.items() for recipe in one["makes"]]
DATED = [
    (key, recipe, str(date["on"])[:10])
    for key, one in CLASSES.items()
    for recipe in one["makes"]
    for date in one["dates"]
    if int(date.get("enrolled", 0))
]


SOAPS = {path.stem for path in EXAMPLE.glob("recipes/*.yaml") if "lye:" in path.read_text(encoding="utf-8")}
AT_BENCHES = [(key, recipe, date) for key, recipe, date in DATED if CLASSES[key]["format"] != "demo"]


def slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.casefold()).strip("-")


def shown(weighing: Any) -> str:
    """Return an amount as the display of its scale shows it."""
    step = Decimal(str(weighing["division"]["value"])).normalize()
    places = max(0, -int(step.as_tuple().exponent))
    return f"{Decimal(str(weighing['reads']['value'])):.{places}f} {weighing['unit']}"


def take_homes(key: str, recipe: str, size: str) -> list[Path]:
    name = f"take-home-{recipe}--{slug(size)}"
    found = [path for path in (*pages(), *sheets()) if path.stem.endswith(name) and key in path.as_posix()]
    assert sorted(path.suffix for path in found) == [".html", ".pdf"], name
    return found


def words_of(path: Path) -> str:
    return sheet_text(path) if path.suffix == ".pdf" else html_text(path)


def test_it_publishes_with_nothing_found_but_what_is_accepted_on_purpose() -> None:
    _, done = published()
    assert done.status == 0
    assert set(re.findall(r": ([a-z-]+) \((\w+)\)$", done.err, flags=re.MULTILINE)) == {("amount-too-small-for-scale", "accepted")}
    assert "Wrote" in done.out and "PDF" not in done.out.split("Found")[0]


def test_on_the_day_of_its_last_change_nothing_else_is_found() -> None:
    """Whoever tries the example runs it without `--today`: what it says was done must not lie ahead of that."""
    done = run("check", EXAMPLE, "--today", "2026-11-25")
    assert re.findall(r": ([a-z-]+) \((\w+)\)$", done.err, flags=re.MULTILINE) == [("amount-too-small-for-scale", "accepted")]


def test_there_are_eight_classes_of_every_format() -> None:
    assert len(CLASSES) == 8
    assert {one["format"] for one in CLASSES.values()} == {"demo", "hands-on", "demo with hands-on parts"}
    folder, _ = published()
    assert {path.stem for path in (folder / "site" / "classes").glob("*.html")} >= set(CLASSES)


def test_every_link_picture_and_style_resolves_on_disk() -> None:
    folder, _ = published()
    composed = {path.resolve() for path in sheets()}
    for path in pages():
        root = folder / path.relative_to(folder).parts[0]
        ids = {tag["id"] for tag in soup(path).find_all(id=True)}
        targets = [str(tag[name]) for name in ("href", "src") for tag in soup(path).find_all(True) if tag.has_attr(name)]
        for target in targets:
            parts = urlsplit(target)
            if parts.scheme in ("https", "http", "mailto", "tel", "data"):
                assert not path.is_relative_to(folder / "site") or parts.scheme != "http", target
                continue
            if not parts.path:
                assert parts.fragment in ids, f"{path}: {target}"
                continue
            # The page for what is not there is shown at any depth, so its links begin at the root of the host.
            start = root if parts.path.startswith("/") else path.parent
            other = (start / unquote(parts.path).lstrip("/")).resolve()
            assert other.is_file() or other in composed, f"{path.relative_to(folder)}: {target}"
            assert other.is_relative_to(root.resolve()), f"{path}: {target} leads out of {root.name}/"


def test_pages_ask_nothing_of_other_hosts() -> None:
    for path in pages():
        for tag in soup(path).find_all(["script", "link", "img", "iframe"]):
            # The page's own public address is named, not fetched.
            if "canonical" in (tag.get("rel") or ()):
                continue
            address = str(tag.get("src") or tag.get("href") or "")
            assert not urlsplit(address).netloc, f"{path}: {address}"
        # What stands there for search engines is data, and no program.
        assert all(one.get("type") == "application/ld+json" for one in soup(path).find_all("script"))


def test_every_page_of_the_site_forbids_what_it_does_not_need() -> None:
    """CSP Level 3: a policy stands before all that it is about. WEB-12 of the project: no program, a style in a page by its hash."""
    policy = re.compile(
        r"default-src 'none'; style-src 'self'( 'sha256-[\w+/=]{44}')?; (font-src 'self'; )?"
        r"img-src 'self'( data:)?; base-uri 'none'; form-action 'none'"
    )
    for path in (one for one in pages() if "site" in one.parts):
        charset, first, *_ = sure(soup(path).head).find_all(True)
        assert (charset.name, charset.get("charset"), first.get("http-equiv")) == ("meta", "utf-8", "Content-Security-Policy"), path
        said = policy.fullmatch(str(first["content"]))
        assert said, path
        assert bool(said[1]) == bool(soup(path).find("style")), path
        assert not soup(path).select("[style]") and not any(
            name.startswith("on") for tag in soup(path).find_all(True) for name in tag.attrs
        ), path


def test_every_page_has_title_language_and_one_heading() -> None:
    titles = [sure(soup(path).title).get_text() for path in pages() if "site" in path.parts]
    assert len(titles) == len(set(titles))
    for path in pages():
        assert sure(soup(path).html)["lang"]
        assert len(soup(path).find_all("h1")) == 1, path
        assert all(image.get("alt") for image in soup(path).find_all("img")), path


@pytest.mark.parametrize(("key", "recipe"), PRODUCTS)
def test_the_take_home_sheet_shows_the_amounts_of_both_columns(key: str, recipe: str) -> None:
    for home in weighed(key, recipe)["product"]["at home"]:
        for path in take_homes(key, recipe, home["size"]):
            text = words_of(path)
            for column in home["batch"]["columns"]:
                for weighing in column["weighed"]:
                    assert shown(weighing) in text, f"{path.name}: {weighing['ingredient']} {shown(weighing)}"


@pytest.mark.parametrize(("key", "recipe"), PRODUCTS)
def test_an_amount_in_a_step_is_the_amount_in_the_table(key: str, recipe: str) -> None:
    lesson = (EXAMPLE / "classes" / key / "lesson.md").read_text(encoding="utf-8")
    for home in weighed(key, recipe)["product"]["at home"]:
        (html,) = [path for path in take_homes(key, recipe, home["size"]) if path.suffix == ".html"]
        steps = squeeze(" ".join(tag.get_text(" ") for tag in soup(html).select("ol > li")))
        grams, ounces = home["batch"]["columns"]
        named = 0
        for gram, ounce in zip(grams["weighed"], ounces["weighed"], strict=True):
            if "{" + gram["ingredient"].casefold() + "}" in lesson.casefold():
                assert f"{shown(gram)} ({shown(ounce)})" in steps, f"{html.name}: {gram['ingredient']}"
                named += 1
        assert named or "base" in recipe or "jug" in recipe or len(grams["weighed"]) == 1


@pytest.mark.parametrize(("key", "recipe", "date"), DATED)
def test_the_teachers_sheet_shows_every_batch_as_weighed(key: str, recipe: str, date: str) -> None:
    folder, _ = published()
    text = sheet_text(folder / "print" / key / date / "teacher.pdf")
    product = weighed(key, recipe, date)["product"]
    for planned in product["batches"]:
        for weighing in planned["batch"]["columns"][0]["weighed"]:
            assert shown(weighing) in text, f"{weighing['ingredient']} {shown(weighing)}"


@pytest.mark.parametrize(("key", "recipe", "date"), AT_BENCHES)
def test_the_bench_card_shows_the_share_of_a_group(key: str, recipe: str, date: str) -> None:
    folder, _ = published()
    path = folder / "print" / key / date / "bench-cards.pdf"
    text, product = sheet_text(path), weighed(key, recipe, date)["product"]
    batch = product["batches"][0]
    assert f"{Decimal(str(batch['batch']['portions']['fill']['value'])).normalize():f} g" in text
    if batch["for"] != "class":
        for weighing in batch["batch"]["columns"][0]["weighed"]:
            assert shown(weighing) in text, weighing["ingredient"]


@pytest.mark.parametrize(("key", "recipe"), PRODUCTS)
def test_the_class_page_names_what_is_made_and_how_much(key: str, recipe: str) -> None:
    folder, _ = published()
    text = html_text(folder / "site" / "classes" / f"{key}.html")
    batch = weighed(key, recipe)["product"]["batches"][0]["batch"]
    assert batch["name"] in text
    assert f"{Decimal(str(batch['portions']['fill']['value'])).normalize():f} g" in text


@pytest.mark.parametrize(("key", "recipe", "date"), DATED)
def test_a_label_lists_the_ingredients_in_the_order_that_was_worked_out(key: str, recipe: str, date: str) -> None:
    folder, _ = published()
    text = sheet_text(folder / "print" / key / date / f"labels-{recipe}.pdf").casefold()
    for variant in weighed(key, recipe, date)["product"]["batches"][0]["batch"]["ingredient lists"][:1]:
        at = 0
        for entry in variant["list"]["entries"]:
            # In the United States a label has the name of the ingredient dictionary, which holds the plain name or the INCI name.
            found = [text.find(first_word(entry[kind]), at) for kind in ("plain", "inci")]
            assert max(found) >= 0, f"{entry['plain']} after {text[max(0, at - 40) : at + 80]}"
            at = min(place for place in found if place >= 0)


def first_word(name: str) -> str:
    """Return the first word of a name that is long enough to be looked for, or all of it."""
    return next((word for word in re.findall(r"[a-z]+", name.casefold()) if len(word) > 3), name.casefold())


AMOUNTS = re.compile(r"\d+(?:\.\d+)? (?:g|oz|mL|%|drops?|°[CF])(?!\w)")


@pytest.mark.long(sample=True)
def test_every_amount_that_was_composed_stands_on_the_sheet_as_pressed() -> None:
    """What is held of the text that was composed for a sheet holds of the sheet; in few words where room is short."""
    whole = {path: composed_for(path).read_text(encoding="utf-8") for path in pdfs()}
    written = {path: re.sub(r'<p class="in-full">.*?</p>', "", html, flags=re.DOTALL) for path, html in whole.items()}
    told = {path: text_of(html, ("script", "style", "svg")) for path, html in written.items()}
    lost = {path.name: set(AMOUNTS.findall(squeeze(text))) - set(AMOUNTS.findall(pdf_text(path))) for path, text in told.items()}
    assert sum(len(AMOUNTS.findall(squeeze(text))) for text in told.values()) > 500
    assert {name: amounts for name, amounts in lost.items() if amounts} == {}


def test_nothing_is_said_of_a_sheet_by_the_library_that_presses_it() -> None:
    _, publication = published()
    assert [line for line in publication.err.splitlines() if ".pdf: " in line] == []


def test_every_date_has_its_documents() -> None:
    folder, _ = published()
    for key, recipe, date in DATED:
        there = {path.name for path in sheets() if path.parent == folder / "print" / key / date}
        assert there >= {"teacher.pdf", "workings.pdf", "why-this-format.pdf", "checklist.pdf", f"labels-{recipe}.pdf"}
        assert ({"bench-cards.pdf", "bench-steps.pdf"} <= there) == (CLASSES[key]["format"] != "demo")


# The faces in which names stand on labels.
FACES_OF_NAMES = ("labelserif", "labelitalic", "labellight", "labelheavy", "labelnarrow", "labelhand")


@pytest.mark.long(sample=True)
def test_every_pdf_is_on_the_studios_paper_in_our_fonts_and_tagged() -> None:
    for path in pdfs():
        assert {size for size, _ in pdf_pages(path)} == {(612, 792)}, path
        fonts = pdf_fonts(path)
        faces = ("FiraSans", *(FACES_OF_NAMES if "label" in path.name or path.name == "tags.pdf" else ()))
        assert fonts and all(font.replace("-", "").startswith(faces) for font in fonts), f"{path}: {fonts}"
        report = ua1.validate_pdf_bytes(path.read_bytes(), profile="ua1")
        assert report.is_compliant, f"{path}: {report.failures}"


@pytest.mark.long(sample=True)
def test_no_words_of_a_sheet_are_set_in_type_smaller_than_ten_points() -> None:
    """Our own bound, TYPE-02: 10 pt at the least, 8 pt on labels. In drawings numbers are smaller, on the test page its rulers."""
    for path in (one for one in pdfs() if "label" not in one.name and one.name not in ("tags.pdf", "pack.pdf")):
        assert re.fullmatch(r"[\d.g]*", pdf_small_text(path, 10)), path


@pytest.mark.long(sample=True)
def test_no_sheet_is_longer_than_a_person_reads() -> None:
    for path in pdfs():
        seats = max(int(one["seats"]) for one in CLASSES.values())
        # Cards of all pots, and all of a date in one file, are no sheets that somebody reads from beginning to end.
        most = {
            "bench-cards.pdf": 2 * seats,
            "batch-cards.pdf": seats,
            "pack.pdf": 20 * seats,
            "teacher.pdf": 6,
            "bench-steps.pdf": 4,
        }.get(path.name, 20 if "large-print" in path.name else 12)
        assert len(pdf_pages(path)) <= most, f"{path}: {len(pdf_pages(path))} pages"


@pytest.mark.long(sample=True)
def test_the_check_list_fits_one_page_and_ticks_everything() -> None:
    lists = [path for path in sheets() if path.name == "checklist.pdf"]
    assert len(lists) == len({(key, date) for key, _, date in DATED})
    assert any(path.exists() for path in lists)
    for path in lists:
        assert not path.exists() or len(pdf_pages(path)) == 1, path
        text = sheet_text(path)
        for heading in ("Print", "For each person", "Before the doors open", "When all have gone"):
            assert heading in text, path


@pytest.mark.long(sample=True)
def test_no_bench_card_has_a_page_of_one_line() -> None:
    cards = [path for path in pdfs() if path.name == "bench-cards.pdf"]
    assert cards
    for path in cards:
        for _, text in pdf_pages(path):
            assert len(text.split()) > 15, path


def test_no_page_of_a_sheet_is_left_to_a_few_lines() -> None:
    """Five lines beside the foot, which has some 25 words: less is a page for nothing. In large print a step more or less is no waste."""
    for path in (path for path in pdfs() if path.name == "teacher.pdf" or ("take-home" in path.name and "large-print" not in path.name)):
        for number, (_, text) in enumerate(pdf_pages(path), start=1):
            assert len(text.split()) > 50, f"{path}, page {number}: {text}"


@pytest.mark.long
def test_on_a4_every_sheet_is_a4(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    shutil.copytree(Path(__file__).parent / "findings" / "_sound", studio)
    profile = studio / "studio.yaml"
    profile.write_text(profile.read_text(encoding="utf-8").replace("paper: letter", "paper: A4"), encoding="utf-8")
    with sheets_pressed():
        assert run("publish", studio, "--to", tmp_path / "out", "--today", "2027-01-02").status == 0
    made = sorted((tmp_path / "out").rglob("*.pdf"))
    assert len(made) >= 7
    for path in made:
        assert {(round(width, 1), round(height, 1)) for (width, height), _ in pdf_pages(path)} == {(595.3, 841.9)}, path


def test_no_number_is_parted_from_its_unit() -> None:
    """A space that does not break stands between them (SI Brochure, 5.4.3, asks for a space; that no line breaks there is UNIT-01)."""
    parted = re.compile(r"\d (?:g|kg|oz|fl oz|lb|mL|L|mm|cm|°C|°F)\b")
    found = {
        f"{path.name}: {words[max(0, hit.start() - 30) : hit.end()]}"
        for path in pages()
        for words in soup(path).find_all(string=True)
        if words.parent and words.parent.name not in ("script", "style", "title")
        for hit in parted.finditer(words)
    }
    assert sorted(found) == []


def test_lessons_with_lye_say_which_jug() -> None:
    """Of two jugs, one for lye and one for oils, none is called "the jug" by a step that puts something into one."""
    with_lye = [
        path.with_name("lesson.md")
        for path in sorted(EXAMPLE.glob("classes/*/class.yaml"))
        if {*CLASSES[path.parent.name]["makes"]} & SOAPS
    ]
    assert len(with_lye) == 3
    assert [line for path in with_lye for line in path.read_text(encoding="utf-8").split("\n") if "into the jug" in line] == []
