"""Files that no studio writes on purpose: far too large, too deep, cut off, full of rubbish, or leading out of the folder.

Whatever a file holds, `stillroom check` ends with 0 or 1 and says what is wrong in its own words, never with a traceback.
"""

import os
import random
import shutil
import time
from collections.abc import Iterator
from datetime import date
from itertools import count
from pathlib import Path

import pytest
from _pytest.mark.structures import ParameterSet

from builder import pipeline
from builder.library import CONTENT
from tests.published import run
from tests.test_findings import FINDINGS, check, lay_out

SOUND = FINDINGS / "_sound"
FILES = sorted(path.relative_to(SOUND).as_posix() for path in SOUND.rglob("*") if path.is_file())
CARDS = (
    "water", "glycerin", "sunflower-oil", "emulsifying-wax", "lavender-essential-oil", "olive-oil", "coconut-oil", "sodium-hydroxide",
    "potassium-hydroxide",
)  # fmt: skip
RECIPE, LESSON = "recipes/plain-bar.yaml", "classes/one-bar/lesson.md"


@pytest.fixture
def studio(tmp_path: Path) -> Path:
    """Lay out the sound studio."""
    lay_out(None, tmp_path / "studio")
    return tmp_path / "studio"


@pytest.fixture(scope="module")
def small_stock(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the part of the library that the sound studio draws on, so that many runs take little time."""
    stock = tmp_path_factory.mktemp("stock")
    for name in ("constants.yaml", "containers.yaml", "products.yaml", "regions.yaml", "sources.yaml"):
        shutil.copy(CONTENT / name, stock)
    for name in ("cautions", "languages"):
        shutil.copytree(CONTENT / name, stock / name)
    (stock / "tables").mkdir()
    for name in ("flame_words", "word_groups"):
        shutil.copy(CONTENT / "tables" / f"{name}.yaml", stock / "tables")
    (stock / "ingredients").mkdir()
    for card in CARDS:
        shutil.copy(CONTENT / "ingredients" / f"{card}.yaml", stock / "ingredients")
    return stock


def append(file: Path, text: str) -> None:
    file.write_text(file.read_text(encoding="utf-8") + text, encoding="utf-8")


def replace(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def found(studio: Path) -> str:
    """Check a studio that something stops, and give what was printed about it."""
    status, _, err = check(studio)
    assert status == 1
    return err


# What is sound in itself


@pytest.mark.parametrize(("mark", "ending"), [(b"\xef\xbb\xbf", b"\r\n"), (b"", b"\r\n"), (b"", b"\r")], ids=["bom-crlf", "crlf", "cr"])
def test_byte_order_mark_and_line_endings_are_sound(studio: Path, mark: bytes, ending: bytes) -> None:
    for name in FILES:
        data = (studio / name).read_bytes()
        (studio / name).write_bytes(mark + data.replace(b"\n", ending))
    assert check(studio)[::2] == (0, "")


def test_letters_of_other_languages_are_sound(studio: Path) -> None:
    replace(studio / "studio.yaml", "A. Teacher", "Žofie Ærøe-Gößl, Łódź")
    replace(studio / RECIPE, "name: Plain bar", "name: Savon à l’huile d’olive")
    append(studio / LESSON, "\nŠťastnou ruku! ¡Adiós! Καλή τύχη! До встречи!\n")
    assert check(studio)[::2] == (0, "")


def test_spaces_that_do_not_break_are_spaces(studio: Path) -> None:
    replace(studio / "classes/one-lotion/class.yaml", "at home:", "at\u00a0home:")
    replace(studio / "recipes/plain-lotion.yaml", "emulsifying wax", "emulsifying\u202fwax")
    assert check(studio)[::2] == (0, "")


# How it is shown


@pytest.mark.parametrize("sign", ["\u2028", "\u2029", "\u0085", "\x0b", "\x0c", "\x1c"])
def test_only_the_end_of_a_line_ends_it(studio: Path, sign: str) -> None:
    replace(studio / LESSON, "The teacher makes soap.", f"The teacher{sign}makes soap.")
    replace(studio / LESSON, "{olive oil}", "{olve oil}")
    err = found(studio)
    assert f"{LESSON}:7:10: mention-unknown (stop)\n    7 | 1. Weigh {{olve oil}} of" in err
    assert sign not in err


@pytest.mark.parametrize("sign", ["\u2028", "\u2029", "\u0085"])
def test_only_the_end_of_a_line_ends_it_in_a_recipe_too(studio: Path, sign: str) -> None:
    replace(studio / RECIPE, "name: Plain bar", f"name: Plain{sign}bar")
    replace(studio / RECIPE, "superfat: 8 %", "superfat: 8")
    assert f"{RECIPE}:11:13: unit-missing (stop)\n   11 |   superfat: 8\n" in found(studio)


def test_a_place_in_line_100(studio: Path) -> None:
    append(studio / LESSON, "\n" * 90 + "{nothing}\n")
    assert f"{LESSON}:100:1: mention-unknown (stop)" in found(studio)


def test_signs_to_the_terminal_are_shown_and_not_obeyed(studio: Path) -> None:
    append(studio / LESSON, "\n[red]bold[/] :smiley: \x1b[31m \u202e {nothing}\n")
    err = found(studio)
    assert "[red]bold[/] :smiley: \ufffd[31m \ufffd {nothing}" in err
    assert "\x1b" not in err


@pytest.mark.long
def test_a_long_line_is_shown_around_the_mark(studio: Path) -> None:
    append(studio / LESSON, "\n" + "Stir. " * 5_000 + "{nothing} " + "Stir. " * 5_000 + "\n")
    shown, mark = found(studio).split("\n")[1:3]
    assert len(shown) < 180
    assert shown[len("   10 | ")] == shown[-1] == "…"
    assert shown[mark.index("^") : mark.rindex("^") + 1] == "{nothing}"


def test_many_findings_of_a_kind_are_summed_up_on_a_terminal_only(studio: Path) -> None:
    append(studio / LESSON, "\n" + "{nothing} " * 400 + "\n")
    status, out, err = check(studio)
    assert (status, err.count(": mention-unknown (stop)")) == (1, 20)
    assert f"{LESSON}: and 380 more of this kind (mention-unknown) in this file\n" in err
    assert "400 stops" in out
    assert sum(finding.name == "mention-unknown" for finding in pipeline.check(studio, on=date(2027, 1, 1)).findings) == 400


@pytest.mark.long
@pytest.mark.parametrize(("text", "times"), [("{x} ", 5_000), ("{x} ", 20_000), ("{ ", 20_000), ("{", 20_000), ("}", 20_000)])
def test_thousands_of_braces_in_a_line(studio: Path, text: str, times: int) -> None:
    append(studio / LESSON, "\n" + text * times + "\n")
    assert len(found(studio)) < 20_000


# Too much


def test_a_recipe_of_two_megabytes(studio: Path) -> None:
    append(studio / RECIPE, "# " + "x" * 2_000_000 + "\n")
    err = found(studio)
    assert f"{RECIPE}: file-too-large (stop)" in err
    assert len(err) < 1_000


def test_a_lesson_of_two_megabytes(studio: Path) -> None:
    append(studio / LESSON, "\nStir.\n" * 300_000)
    err = found(studio)
    assert f"{LESSON}: file-too-large (stop)" in err


def test_more_values_than_can_be_meant(studio: Path) -> None:
    append(studio / RECIPE, "tools:\n" + "  - a spoon\n" * 25_000)
    assert ": file-too-large (stop)" in found(studio)


@pytest.mark.parametrize("many", [9, 1])
def test_a_value_that_names_others_and_these_others_again(studio: Path, many: int) -> None:
    lines = ["  - &a0 [spoon]\n", *(f"  - &a{n} [{', '.join([f'*a{n - 1}'] * many)}]\n" for n in range(1, 25))]
    append(studio / RECIPE, "tools:\n" + "".join(lines))
    findings = pipeline.check(studio, on=date(2027, 1, 1)).findings
    assert sum(finding.name == "alias-used" for finding in findings) == 24 * many


def test_a_value_that_names_itself(studio: Path) -> None:
    append(studio / RECIPE, "tools: &tools [*tools]\n")
    assert ": alias-used (stop)" in found(studio)


@pytest.mark.parametrize("depth", [45, 900])
def test_brackets_in_brackets(studio: Path, depth: int) -> None:
    append(studio / RECIPE, f"tools: {'[' * depth}{']' * depth}\n")
    assert ": yaml-too-deep (stop)" in found(studio)


def test_more_brackets_than_the_parser_takes(studio: Path) -> None:
    append(studio / RECIPE, f"tools: {'[' * 100_000}\n")
    assert f"{RECIPE}:15:" in found(studio)


@pytest.mark.parametrize("sign", ["[", "*", "<", ">", "`", "{", "}", "![](", "- ", "1. ", "| a ", "\\", "&"])
def test_a_sign_again_and_again(studio: Path, sign: str) -> None:
    append(studio / LESSON, "\n" + sign * 400 + "\n")
    assert check(studio)[0] in (0, 1)


# What YAML has beyond text


def test_a_type_is_not_made(studio: Path, tmp_path: Path) -> None:
    made = tmp_path / "made"
    append(studio / "studio.yaml", f'tagline: !!python/object/apply:os.mkdir ["{made}"]\n')
    assert ": tag-used (stop)" in found(studio)
    assert not made.exists()


# What is no plain file of the folder


def test_a_link_to_a_file_elsewhere(studio: Path, tmp_path: Path) -> None:
    (tmp_path / "elsewhere.yaml").write_text("name: A secret\n", encoding="utf-8")
    (studio / "recipes" / "secret.yaml").symlink_to(tmp_path / "elsewhere.yaml")
    err = found(studio)
    assert "recipes/secret.yaml: file-outside-studio (stop)" in err
    assert "A secret" not in err


def test_a_link_to_a_folder_elsewhere(studio: Path, tmp_path: Path) -> None:
    shutil.copytree(studio / "classes" / "one-bar", tmp_path / "elsewhere")
    (studio / "classes" / "another-bar").symlink_to(tmp_path / "elsewhere")
    assert "classes/another-bar: file-outside-studio (stop)" in found(studio)


def test_a_picture_elsewhere(studio: Path, tmp_path: Path) -> None:
    (tmp_path / "bottle.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'/>", encoding="utf-8")
    (studio / "classes" / "one-bar" / "bottle.svg").symlink_to(tmp_path / "bottle.svg")
    assert "classes/one-bar/bottle.svg: file-outside-studio (stop)" in found(studio)


def test_a_file_that_may_not_be_opened(studio: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    read = Path.read_bytes

    def refuse(path: Path) -> bytes:
        if path == studio / RECIPE:
            raise PermissionError
        return read(path)

    monkeypatch.setattr(Path, "read_bytes", refuse)
    err = found(studio)
    assert f"{RECIPE}: file-unreadable (stop)" in err


@pytest.mark.parametrize("name", ["recipes/rose-bar.yaml", "classes/one-bar/bottle.svg", "shelf/ingredients/rose-oil.yaml"])
@pytest.mark.parametrize("target", ["itself", "nowhere"])
def test_a_link_that_leads_to_no_file(studio: Path, name: str, target: str) -> None:
    (studio / name).parent.mkdir(parents=True, exist_ok=True)
    (studio / name).symlink_to((studio / name).name if target == "itself" else "nowhere")
    assert f"{name}: file-unreadable (stop)" in found(studio)


@pytest.mark.parametrize(
    "name", ["recipes/rose-bar.yaml", "classes/one-bar/bottle.svg", "pages/welcome.md", "shelf/sources.yaml", "studio.yaml", RECIPE, LESSON]
)
def test_a_pipe_that_nobody_writes_into(studio: Path, name: str) -> None:
    (studio / name).parent.mkdir(exist_ok=True)
    (studio / name).unlink(missing_ok=True)
    os.mkfifo(studio / name)
    assert f"{name}: file-unreadable (stop)" in found(studio)


@pytest.mark.parametrize("name", ["layouts/parts/lye.html", "layouts/styles/own.css"])
@pytest.mark.parametrize(
    ("target", "told"), [("/dev/zero", "unreadable"), ("nowhere", "unreadable"), ("..", "unreadable"), ("/etc/hosts", "outside-studio")]
)
def test_a_template_or_a_style_that_is_no_plain_file(studio: Path, name: str, target: str, told: str, tmp_path: Path) -> None:
    (studio / name).parent.mkdir(parents=True)
    (studio / name).symlink_to(target)
    assert f"{name}: file-{told} (stop)" in found(studio)
    done = run("publish", studio, "--only-sound", "--to", tmp_path / "to", "--today", "2027-01-01")
    assert done.status == 1 and not (tmp_path / "to").exists()


def test_a_folder_of_templates_elsewhere(studio: Path, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (studio / "layouts").mkdir()
    (studio / "layouts" / "styles").symlink_to(tmp_path / "elsewhere")
    assert "layouts/styles: file-outside-studio (stop)" in found(studio)


@pytest.mark.parametrize("name", ["layouts/parts/lye.html", "layouts/styles/own.css"])
def test_a_template_or_a_style_of_two_megabytes(studio: Path, name: str) -> None:
    (studio / name).parent.mkdir(parents=True)
    (studio / name).write_text("x" * 2_000_000, encoding="utf-8")
    assert f"{name}: file-too-large (stop)" in found(studio)


@pytest.mark.parametrize(
    "style", ["& &{" * 25 + "color: red" + "}" * 25, "& & & &{" * 14 + "color: red" + "}" * 14, "div " * 300 + "p { color: red }"]
)
def test_a_selector_that_nobody_could_read_takes_no_longer(studio: Path, style: str) -> None:
    (studio / "layouts" / "styles").mkdir(parents=True)
    (studio / "layouts" / "styles" / "own.css").write_text(style, encoding="utf-8")
    begun = time.process_time()
    assert check(studio)[0] == 0
    assert time.process_time() - begun < 5


def test_folders_in_place_of_files(studio: Path) -> None:
    (studio / LESSON).unlink()
    (studio / LESSON).mkdir()
    (studio / "recipes" / "folder.yaml").mkdir()
    assert f"{LESSON}: lesson-missing (stop)" in found(studio)


def test_a_file_in_place_of_a_folder(studio: Path) -> None:
    shutil.rmtree(studio / "recipes")
    (studio / "recipes").write_text("none yet\n", encoding="utf-8")
    assert ": unknown-recipe (stop)" in found(studio)


# Cut off, and full of rubbish

RUBBISH = (
    b"\t- : {", b"*&%@!`", b"name: name: name", b"- - - -", b"{{{", b"}}}", b"|", b">", b"---", b"...", b"%YAML 9.9", b"?", b": :",
    b"&a *a", b"!!map [", b"<<: *x", b"'\"", b"[[]", b"# \\", b"0/0 %", b"-1e999", b"## (,)", b"## X (students, -5 min, a b, c)",
    b"1. {", b"![](", b"[a](b", b"| a |\n|---|\n| {x", b"{passage: }", b"{caution: }", b"<b", b"&#0;", b"\xff\xfe\x00", b"a\x00b\x07",
    "“漢字” é\u2028x\u0085y".encode(), "\ufeff\u202eabc".encode(), b"    ", b"x" * 3_000,
)  # fmt: skip


def spoilt() -> Iterator[ParameterSet]:
    """Give every file of the sound studio cut at each 40th byte, and with each line in turn replaced by rubbish; each tenth is not long."""
    chance, number = random.Random(1), count()

    def spoiling(name: str, data: bytes, how: str) -> ParameterSet:
        return pytest.param(name, data, id=f"{name} {how}", marks=pytest.mark.long if next(number) % 10 else ())

    for name in FILES:
        data = (SOUND / name).read_bytes()
        for at in range(0, len(data), 40):
            yield spoiling(name, data[:at], f"cut at {at}")
        lines = data.split(b"\n")
        for at in range(len(lines) - 1):
            other = [*lines[:at], chance.choice(RUBBISH), *lines[at + 1 :]]
            yield spoiling(name, b"\n".join(other), f"line {at + 1}")


@pytest.mark.parametrize(("name", "data"), list(spoilt()))
def test_a_spoilt_file(studio: Path, small_stock: Path, monkeypatch: pytest.MonkeyPatch, name: str, data: bytes) -> None:
    monkeypatch.setattr(pipeline, "CONTENT", small_stock)
    (studio / name).write_bytes(data)
    status, out, err = check(studio)
    assert status in (0, 1)
    assert "Traceback" not in out + err


def test_a_folder_that_may_not_be_looked_into_is_told(studio: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    look = Path.iterdir

    def refuse(self: Path) -> Iterator[Path]:
        if self.name == "recipes":
            raise PermissionError(13, "Permission denied", str(self))
        return look(self)

    monkeypatch.setattr(Path, "iterdir", refuse)
    assert "recipes: file-unreadable (stop)" in found(studio)


def test_a_studio_that_may_not_be_looked_into_is_a_sentence_and_no_stop(studio: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(self: Path) -> bool:
        raise PermissionError(13, "Permission denied", str(self))

    monkeypatch.setattr(Path, "is_file", refuse)
    status, out, err = check(studio)
    assert (status, out) == (3, "")
    wrong = f"stillroom: {studio / 'studio.yaml'}: Permission denied; nothing was changed."
    assert err == f"{wrong} Mend that (rights, room on the disk), and give the command again.\n"


# Found by `python -m tests.fuzz`


@pytest.mark.long
def test_a_folder_that_is_no_studio_is_answered_by_every_command(tmp_path: Path) -> None:
    (tmp_path / "layouts").mkdir()
    (tmp_path / "layouts" / "own.html").write_text("<p>{{ view.title }}</p>\n", encoding="utf-8")
    for command in ("check", "shop", "publish"):
        done = run(command, tmp_path, "--today", "2027-01-01")
        assert done.status == 1 and "studio.yaml: studio-missing (stop)" in done.err, command


def test_a_template_that_its_lexer_cannot_read_is_told_with_its_name(studio: Path) -> None:
    (studio / "layouts" / "parts").mkdir(parents=True)
    (studio / "layouts" / "parts" / "lye.html").write_text("<p>\n{% raw %}\n</p>\n", encoding="utf-8")
    assert "layouts/parts/lye.html:2:" in found(studio)


def test_brackets_at_the_very_end_are_shown_where_they_are_opened(studio: Path) -> None:
    file = studio / RECIPE
    file.write_text(file.read_text(encoding="utf-8").rstrip() + "\nchoices:\n  scent: {", encoding="utf-8")
    line = file.read_text(encoding="utf-8").count("\n") + 1
    assert f"{RECIPE}:{line}:11: yaml-broken (stop)\n{line:>5} |   scent: {{\n" in found(studio)


def test_a_link_to_a_name_that_no_file_can_have_leads_nowhere(studio: Path) -> None:
    for name in ("recipes/too-long.yaml", "classes/too-long", "pages/too-long.md", "shelf"):
        (studio / name).symlink_to("x" * 300)
    said = found(studio)
    for name in ("recipes/too-long.yaml", "pages/too-long.md"):
        assert f"{name}: file-unreadable (stop)" in said


# Limits of processor time are generous: what they hold off took minutes.


@pytest.mark.parametrize("times", [50, pytest.param(200, marks=pytest.mark.long)])
def test_a_word_as_long_as_a_file_and_a_sentence_without_an_end_are_read_in_no_time(studio: Path, times: int) -> None:
    append(studio / "pages" / "about.md", "x" * 1000 * times + "\n")
    append(studio / LESSON, "\n1. " + "never add lye, never add water, " * times + "done.\n")
    append(studio / LESSON, "2. " + "add lye, " * 40 * times + "done.\n")
    begun = time.process_time()
    check(studio)
    assert time.process_time() - begun < 15
