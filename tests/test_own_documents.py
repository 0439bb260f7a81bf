"""Documents of a studio's own, each a template and a line in studio.yaml: what is made of them, and who sees it."""

import contextlib
import io
import re
import shutil
from dataclasses import replace
from pathlib import Path
from textwrap import dedent

import pytest

from builder import cli
from builder.compose.publication import compose_documents, editions
from builder.compose.templates import Templates
from builder.compose.tried.layouts_tried import faulty_layouts
from builder.library import CONTENT, LAYOUTS
from builder.model.roster.roster import Guest
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.page_text import words_of
from tests.test_findings import FINDINGS

OWN = """documents:
  packing list: {like: check list, template: packing-list.html, on: paper, seen by: staff, copies: 1 for the helper at the door}
  who comes: {like: roster, template: who-comes.html, on: screen, seen by: staff}
  the steps on the wall: {like: steps at the bench, template: wall.html, on: screen, seen by: students}
  what we made: {like: class page, template: made.html, on: screen, seen by: everybody}
"""
SHEET, PAGE = ('{% extends "frames/' + name + '.html" %}\n{% block main %}\n' for name in ("sheet", "page"))
TEMPLATES = {
    "packing-list.html": SHEET + "<h1>To pack, {{ view.when }}</h1>\n{% for group in view.groups %}<p>{{ group.title }}</p>{% endfor %}\n",
    "who-comes.html": PAGE + "<h1>Who comes</h1>\n{% for one in view.guests %}{{ one.rows|join }}{% endfor %}\n",
    "wall.html": PAGE + '<h1>{{ view.title }}</h1>\n{% for part in view.flow.parts %}{% include "parts/flow-part.html" %}{% endfor %}\n',
    "made.html": PAGE + "<h1>What we made in {{ view.title }}</h1>\n",
}


def write_templates(folder: Path) -> tuple[Path, Path]:
    layouts = folder / "layouts"
    layouts.mkdir()
    for name, text in TEMPLATES.items():
        (layouts / name).write_text(text + "{% endblock %}\n", encoding="utf-8")
    return layouts, LAYOUTS


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return write_studio(tmp_path, studio_yaml=FILES["studio.yaml"] + OWN)


def found_in(studio: Path) -> tuple[int, str]:
    told = io.StringIO()
    with contextlib.redirect_stdout(told), contextlib.redirect_stderr(told):
        status = cli.main(["check", str(studio), "--today", "2027-01-01"])
    return status, told.getvalue().split(":")[0]


def test_each_is_made_for_whatever_the_one_is_made_that_it_is_like(folder: Path) -> None:
    edition, layouts = read_edition(folder), write_templates(folder)
    listed = tuple(replace(sheet, guests=(Guest("Somebody Who Comes", None, "", {}),)) for sheet in edition.plans)
    made = compose_documents(*editions(edition.studio, listed, (), layouts, TODAY))
    at = {f"{one.folder}/{one.path}": one for one in made.documents}
    for day in ("2027-02-06", "2027-03-06"):
        assert words_of(at[f"print/first/{day}/packing-list.pdf"].html).startswith("Packing list: The first class To pack, Saturday,")
        assert "Packing list: 1 for the helper at the door" in words_of(at[f"print/first/{day}/checklist.pdf"].html)
        assert "Somebody Who Comes" in words_of(at[f"print/first/{day}/who-comes.html"].html)
        assert "Fill 113 g into the jar" in words_of(at[f"print/first/{day}/the-steps-on-the-wall.html"].html)
    assert at["print/first/2027-02-06/packing-list.pdf"].styles[-1] == "checklist.css"
    shown = "What we made in The first class"
    assert shown in words_of(at["site/classes/first--what-we-made.html"].html)
    assert 'href="first--what-we-made.html">What we made<' in at["site/classes/first.html"].html
    named = {path for path, one in at.items() if "Somebody Who Comes" in one.html}
    assert all(path.startswith("print/") and path.endswith(("/roster.pdf", "/who-comes.html")) for path in named) and len(named) == 4
    styles = {f"{one.folder}/{one.path}" for one in made.files}
    assert "print/styles/screen.css" in styles


def test_a_template_can_do_nothing_but_show(folder: Path) -> None:
    """A template that somebody passes on must not run anything on the machine of who uses it."""
    layouts = write_templates(folder)
    reaching = "{{ view.__class__.__mro__ }}", "{{ cycler.__init__.__globals__.os.getcwd() }}"
    edition = read_edition(folder)
    for text in reaching:
        (layouts[0] / "made.html").write_text(text, encoding="utf-8")
        (fault,) = faulty_layouts(*editions(edition.studio, edition.plans, (), layouts, TODAY))
        assert (fault.place.file, fault.place.line) == ("layouts/made.html", 1)


def test_the_example_of_the_reference_is_met_in_silence(tmp_path: Path) -> None:
    shown = re.findall(r"(?:^ {4}.*\n|^\n(?= {4}))+", (CONTENT / "reference" / "documents.md").read_text(encoding="utf-8"), re.MULTILINE)
    in_yaml, template = (dedent(one) for one in shown)
    studio = tmp_path / "studio"
    shutil.copytree(FINDINGS / "_sound", studio)
    with (studio / "studio.yaml").open("a", encoding="utf-8") as file:
        file.write(in_yaml)
    (studio / "layouts").mkdir()
    (studio / "layouts" / "packing-list.html").write_text(template, encoding="utf-8")
    assert found_in(studio) == (0, "Nothing found")


def test_sound_documents_are_met_in_silence(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    shutil.copytree(FINDINGS / "_sound", studio)
    with (studio / "studio.yaml").open("a", encoding="utf-8") as file:
        file.write(OWN)
    write_templates(studio)
    (studio / "layouts" / "pages").mkdir()
    ours = (LAYOUTS / "pages" / "class.html").read_text(encoding="utf-8")
    (studio / "layouts" / "pages" / "class.html").write_text(ours.replace("<h1>", '<h1 class="ours">'), encoding="utf-8")
    assert found_in(studio) == (0, "Nothing found")


@pytest.mark.long
def test_templates_are_tried_on_what_nothing_holds_back(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    shutil.copytree(FINDINGS / "_sound", studio)
    (studio / "layouts/parts").mkdir(parents=True)
    shutil.copy(LAYOUTS / "parts/flow-part.html", studio / "layouts/parts")
    assert found_in(studio)[0] == 0
    # It asks for the weight of what is not in the recipe: a stop on the class, of which no document can be composed.
    with (studio / "classes/one-lotion/lesson.md").open("a", encoding="utf-8") as lesson:
        lesson.write("3. Pour in {olive oil} of olive oil.\n")
    assert found_in(studio) == (1, "classes/one-lotion/lesson.md")


@pytest.mark.parametrize(("block", "status"), [("fit", 0), ("main", 1)])
def test_a_frame_may_leave_out_a_block_of_ours_but_not_what_keeps_people_safe(tmp_path: Path, block: str, status: int) -> None:
    studio = tmp_path / "studio"
    shutil.copytree(FINDINGS / "_sound", studio)
    (studio / "layouts/frames").mkdir(parents=True)
    frame = (LAYOUTS / "frames/sheet.html").read_text(encoding="utf-8")
    (studio / "layouts/frames/sheet.html").write_text(frame.replace(f"{{% block {block} %}}{{% endblock %}}", ""), encoding="utf-8")
    assert found_in(studio) == (status, "layouts/frames/sheet.html" if status else "Nothing found")


def test_a_template_without_an_end_is_filled_in_once(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    edition, layouts = read_edition(folder), write_templates(folder)
    (layouts[0] / "frames").mkdir()
    for name in ("page", "sheet"):
        (layouts[0] / "frames" / f"{name}.html").write_text(f'<p>{{% include "frames/{name}.html" %}}</p>', encoding="utf-8")
    filled_in, render = list[str](), Templates.render

    def counting(made: Templates, name: str, view: object) -> str:
        filled_in.append(name)
        return render(made, name, view)

    monkeypatch.setattr(Templates, "render", counting)
    (fault,) = faulty_layouts(*editions(edition.studio, edition.plans, (), layouts, TODAY))
    assert (fault.place.line, fault.said[:30], len(filled_in)) == (1, "this line goes on without end,", 1)
