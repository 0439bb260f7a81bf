"""`stillroom start` and `stillroom add`, as somebody types them: with options, without a terminal, and with answers typed at one."""

import io
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from builder import cli
from tests.published import named, sheets_pressed

ROOT = Path(__file__).parents[2]


def begin(folder: Path, *options: str) -> Path:
    assert cli.main(["start", str(folder), "--plain", *options]) == 0
    return folder


@pytest.mark.long(sample=True)
def test_a_studio_that_answers_itself_is_sound_and_publishes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    studio = begin(tmp_path / "loft", "--product", "bath salts")
    told = capsys.readouterr()
    assert "Nothing found: no stop, no caution." in told.out
    assert "Not yet yours" in told.out and "address" in told.out
    assert told.err == ""
    with sheets_pressed(named("checklist.pdf")):
        assert cli.main(["publish", str(studio), "--today", "2027-01-02"]) == 0
    page = BeautifulSoup((studio / "output" / "site" / "index.html").read_text(encoding="utf-8"), "html.parser")
    assert "Your first bath salts" in page.get_text()
    assert not [path for path in (studio / "output").rglob("*") if ".schemas" in path.as_posix()]


def test_what_is_accepted_for_now_is_told_with_the_file_that_says_more(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    begin(tmp_path / "loft", "--product", "melt and pour", "--called", "Glass bar")
    told = capsys.readouterr().out
    assert "1 accepted with a reason" in told and "Accepted for now: label-name-missing" in told
    assert "stillroom add card" in (tmp_path / "loft" / "recipes" / "glass-bar.yaml").read_text(encoding="utf-8")


def test_options_stand_in_for_the_questions(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    options = ["--name", "Loft: north", "--region", "uk", "--product", "Lotion", "--email", "hello@loft.example", "--units", "grams"]
    lines = "3 Weir Lane; Netherbrook; United Kingdom"
    assert (
        cli.main(["start", str(tmp_path / "loft"), *options, "--address", lines, "--scale", "0.1 g up to 3 kg", "--scale", "1g, 20 kg"])
        == 0
    )
    text = (tmp_path / "loft" / "studio.yaml").read_text(encoding="utf-8")
    assert 'name: "Loft: north"' in text and "region: UK" in text and "currency: GBP" in text
    assert "reads to: 0.1 g, up to: 3 kg" in text and "reads to: 1 g, up to: 20 kg" in text
    assert "Not yet yours" not in capsys.readouterr().out


@pytest.mark.parametrize(
    ("options", "says"),
    [
        ((), "--name and --region and --product, or --plain"),
        (("--plain", "--region", "Canda"), 'Did you mean "Canada"?'),
        (("--plain", "--product", "lotoin"), 'Did you mean "lotion"?'),
        (("--plain", "--scale", "0.1 g"), "0.1 g up to 5 kg"),
        (("--plain", "--scale", "0.1 oz up to 5 lb"), "has to read in grams"),
        (("--plain", "--scale", "5 kg up to 0.1 g"), "smaller one first"),
        (("--plain", "--scale", "0,1 g - 5 kg"), '"0.1 g - 5 kg"'),
        (("--plain", "--scale", "0.1 g up to 5 kg; 0.01 g up to 200 g"), "several scales"),
        (("--plain", "--email", "here"), "hello@example.org"),
    ],
)
def test_what_cannot_be_read_says_what_is_possible_and_nothing_is_written(
    options: tuple[str, ...], says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO())
    assert cli.main(["start", str(tmp_path / "loft"), *options]) == 2
    assert says in capsys.readouterr().err
    assert not (tmp_path / "loft").exists()


def test_what_is_there_is_never_written_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    studio = begin(tmp_path / "loft", "--product", "bath salts")
    before = {path: path.read_bytes() for path in studio.rglob("*") if path.is_file()}
    assert cli.main(["start", str(studio), "--plain"]) == 2
    assert cli.main(["add", "recipe", "First bath salts", "--product", "lotion", "--studio", str(studio)]) == 2
    assert cli.main(["add", "class", "Your first bath salts", "--studio", str(studio)]) == 2
    assert "nothing is written over it" in capsys.readouterr().err
    assert {path: path.read_bytes() for path in studio.rglob("*") if path.is_file()} == before


def typed(folder: Path, *answers: str) -> tuple[int, str]:
    """Start a studio at a terminal of its own, with answers typed; give the status and all that was shown."""
    master, slave = pty.openpty()
    env = os.environ | {"PYTHONPATH": str(ROOT), "TERM": "dumb", "COLUMNS": "100"}
    process = subprocess.Popen(
        [sys.executable, "-m", "builder", "start", "loft"], stdin=slave, stdout=slave, stderr=slave, cwd=folder, env=env, close_fds=True
    )
    os.close(slave)
    # The last sign ends the input, so that a question too many is answered by nobody and does not wait.
    os.write(master, "".join(f"{answer}\n" for answer in (*answers, "\x04")).encode())
    shown = b""
    while True:
        try:
            piece = os.read(master, 65536)
        except OSError:
            break
        if not piece:
            break
        shown += piece
    os.close(master)
    return process.wait(), shown.decode()


@pytest.mark.long
def test_questions_are_asked_again_until_they_can_be_read(tmp_path: Path) -> None:
    of_the_studio = ("", "The Loft", "Atlantis", "ireland", "", "nobody", "me@loft.example")
    of_the_scales = ("stones", "grams", "0.1 g", "0.1 g up to 3 kg", "")
    answers = (*of_the_studio, *of_the_scales, "lotoin", "lotion", "Hedge lotion")
    status, shown = typed(tmp_path, *answers)
    assert status == 0, shown
    assert "Write something" in shown and "Possible are: US, EU, UK, Canada" in shown
    assert "Possible are: grams, ounces" in shown and 'Did you mean "lotion"?' in shown
    text = (tmp_path / "loft" / "studio.yaml").read_text(encoding="utf-8")
    assert "name: The Loft\n" in text and "region: EU" in text and "me@loft.example" in text
    assert (tmp_path / "loft" / "recipes" / "hedge-lotion.yaml").is_file()


@pytest.mark.long
def test_who_weighs_in_ounces_is_asked_for_a_scale_that_shows_them(tmp_path: Path) -> None:
    answers = ("Loft", "USA", "", "", "oz", "0.1 g up to 5 kg", "0.005 oz up to 11 lb", "", "soap", "6", "")
    status, shown = typed(tmp_path, *answers)
    assert status == 0, shown
    assert "You weigh in ounces" in shown and 'Did you mean "liquid soap"' in shown
    assert "0.2 oz" in (tmp_path / "loft" / "classes" / "your-first-lip-balm" / "class.yaml").read_text(encoding="utf-8")


@pytest.mark.long
def test_who_has_no_such_scale_weighs_in_grams(tmp_path: Path) -> None:
    status, shown = typed(tmp_path, "Loft", "US", "", "", "ounces", "0.1 g up to 5 kg", "", "lip balm", "")
    assert status == 0, shown
    assert " oz" not in (tmp_path / "loft" / "classes" / "your-first-lip-balm" / "class.yaml").read_text(encoding="utf-8")


@pytest.mark.long
def test_answers_that_end_too_early_write_nothing(tmp_path: Path) -> None:
    status, shown = typed(tmp_path, "The Loft")
    assert status == 2 and "nothing was written" in shown
    assert not (tmp_path / "loft").exists()


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return begin(tmp_path_factory.mktemp("added") / "loft", "--product", "bath salts")


def add(studio: Path, capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    status = cli.main(["add", *words, "--studio", str(studio)])
    told = capsys.readouterr()
    return status, told.out, told.err


def test_one_thing_after_another_is_added_and_the_studio_stays_sound(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for words in (
        ("recipe", "Fine balm", "--product", "balm"),
        ("recipe", "Fair bath salts", "--product", "bath salts"),
        ("class", "An evening of balm", "--recipe", "fine-balm"),
        ("class", "Salts again", "--recipe", "fair-bath-salts"),
        ("date", "2031-03-06 10:00", "--class", "salts-again", "--enrolled", "5"),
        ("date", "2031-03-07 10:00", "--class", "salts-again"),
        ("card", "Weir soap base", "--kind", "soap base"),
        ("container", "2 oz tin", "--holds", "2 fl oz", "--shape", "round lid"),
        ("container", "Weir loaf", "--holds", "30 cm x 8 cm x 7 cm", "--shape", "rectangle"),
    ):
        status, out, err = add(studio, capsys, *words)
        assert (status, err) == (0, ""), words
        assert "Nothing found" in out, words
    text = (studio / "classes" / "salts-again" / "class.yaml").read_text(encoding="utf-8")
    assert "dates:\n  - {on: 2031-03-06 10:00, enrolled: 5}\n  - {on: 2031-03-07 10:00}\n" in text
    assert "code: " in (studio / "recipes" / "fair-bath-salts.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("class", "Another",), "more than one recipe"),
        (("class", "Another", "--recipe", "fine-blam"), 'Did you mean "fine-balm"?'),
        (("date", "tomorrow", "--class", "salts-again"), "2027-03-06 09:30"),
        (("date", "2031-03-06 10:00", "--class", "salts-again"), "has this date already"),
        (("date", "2031-04-06 10:00", "--class", "salts-again", "--enrolled", "some"), "whole number"),
        (("card", "Weir lye", "--kind", "alkali"), "no kind of ingredient that can be begun here"),
        (("card", "white clay", "--kind", "clay"), "another name of Kaolin clay"),
        (("container", "2 OZ tin", "--holds", "2 fl oz", "--shape", "round lid"), "is there already"),
        (("container", "3 oz tin", "--holds", "3 oz", "--shape", "round lid"), '"3 fl oz"'),
        (("container", "3 oz tin", "--holds", "3 fl oz", "--shape", "round"), 'Did you mean "round lid"?'),
        (("recipe", "Hedge", "--product", "jam"), "Possible are: bath salts"),
    ],
)  # fmt: skip
def test_what_cannot_be_added_says_why(studio: Path, words: tuple[str, ...], says: str, capsys: pytest.CaptureFixture[str]) -> None:
    status, _, err = add(studio, capsys, *words)
    assert status == 2
    assert says in err


def test_a_class_that_cannot_be_read_is_not_passed_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = begin(tmp_path / "loft", "--product", "bath salts")
    (written,) = (folder / "classes").glob("*/class.yaml")
    written.write_text(written.read_text(encoding="utf-8").replace("title: ", "title: Salts: "), encoding="utf-8")
    status, _, err = add(folder, capsys, "date", "2031-03-06 10:00")
    assert status == 2 and "your-first-bath-salts cannot be read as it stands; `stillroom check`" in err
    status, _, err = add(folder, capsys, "recipe", "Fine balm", "--product", "balm")
    assert "yaml-broken" in err


def test_what_is_found_elsewhere_is_counted_alone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = begin(tmp_path / "loft", "--product", "bath salts")
    (written,) = (folder / "classes").glob("*/class.yaml")
    written.write_text(written.read_text(encoding="utf-8").replace("\nlength: ", "\nlength: 3 h # "), encoding="utf-8")
    _, out, err = add(folder, capsys, "recipe", "Fine balm", "--product", "balm")
    assert "1 caution is about something else; `stillroom check` shows all." in out and err == ""


def test_a_scale_that_is_named_twice_is_one(tmp_path: Path) -> None:
    begin(tmp_path / "loft", "--product", "bath salts", "--units", "grams", "--scale", "0.1g - 5kg", "--scale", "0.1 g up to 5 kg")
    assert (tmp_path / "loft" / "studio.yaml").read_text(encoding="utf-8").count("reads to: 0.1 g, up to: 5 kg") == 1


def test_the_only_recipe_of_a_class_is_weighed(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["weigh", str(studio), "--class", "an-evening-of-balm"]) == 0
    assert "Fine balm" in capsys.readouterr().out


def test_a_lesson_calls_a_base_as_people_say_it(tmp_path: Path) -> None:
    (lesson,) = begin(tmp_path / "loft", "--product", "melt-and-pour soap").glob("classes/*/lesson.md")
    assert "Weigh {clear soap base} of clear soap base into" in lesson.read_text(encoding="utf-8")


def test_the_card_of_a_scent_says_what_its_label_needs(studio: Path, capsys: pytest.CaptureFixture[str]) -> None:
    add(studio, capsys, "card", "Weir rose", "--kind", "fragrance")
    add(studio, capsys, "card", "Weir silt", "--kind", "clay")
    rose, silt = ((studio / "shelf" / "ingredients" / f"weir-{one}.yaml").read_text(encoding="utf-8") for one in ("rose", "silt"))
    assert "\n# allergen statement: {covers: extended list" in rose and "allergen" not in silt and "\n\n" not in silt


def test_inside_a_studio_no_studio_is_named(studio: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(studio / "classes" / "salts-again")
    for words in (["check"], ["weigh", "fine-balm", "--total", "500 g"], ["plan", "salts-again"], ["shop"], ["list", "recipes"]):
        assert cli.main(words) == 0, words
    assert "Fine balm" in capsys.readouterr().out
    assert cli.main(["weigh"]) == 2
    assert "say which recipe: fair-bath-salts, fine-balm, first-bath-salts" in capsys.readouterr().err


def test_the_only_recipe_and_the_only_class_are_taken(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(begin(tmp_path / "loft", "--product", "balm"))
    assert cli.main(["weigh", "--total", "500 g"]) == 0
    assert cli.main(["plan"]) == 0
    assert "Your first balm" in capsys.readouterr().out


def test_outside_of_a_studio_the_way_in_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    for words in (["check"], ["weigh", "fine-balm"], ["add", "date"], ["list", "recipes"]):
        assert cli.main(words) == 2
        assert "stillroom start FOLDER" in capsys.readouterr().err or words[0] == "weigh"
