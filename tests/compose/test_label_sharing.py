"""Labels of one date on as few sheets as can be: products share sheets of one size, in the order of the roster, the spare ones last."""

import re
from dataclasses import replace
from math import ceil
from pathlib import Path
from shutil import copytree

import pytest

from builder import cli
from builder.compose.edition import Edition
from builder.compose.label_again import NotOnTheSheetError, labels_again
from builder.compose.label_layout.label_plans import plan_labels
from builder.compose.label_layout.sharing import on_shared_sheets
from builder.compose.label_layout.spare import spare_labels
from builder.compose.publication import editions
from builder.compose.scopes import LABELS, Labelled
from builder.library import LAYOUTS
from builder.press.folder import FolderError
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.composing import composed

# On sheets of twelve labels that the paper is cut into already, both products of the class have labels of one size.
SHARED = FILES["studio.yaml"].rstrip("\n") + "\nlabels: {sheet: our rows, panels: 2, spare: 3, names of their own: yes}\n"
ROWS = """our rows: {paper: letter, columns: 3, rows: 4, width: 2.4 in, height: 2.5 in, left: 0.55 in, top: 0.45 in, across: 0.1 in}
"""
ROSTER = """name,date,scent,design,their name for it
Ada Loom,2027-03-06,lavender essential oil,slate,Sleepy salts
Bo Fenn,2027-03-06,no scent,,
"""
STUDENTS, CELLS, EACH = 5, 12, 2
SOUND = Path(__file__).parent.parent / "findings" / "_sound"


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = write_studio(tmp_path_factory.mktemp("sharing"), studio_yaml=SHARED, **{"shelf/label_sheets.yaml": ROWS})
    (folder / "classes/first/roster.csv").write_text(ROSTER, encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def edition(studio: Path) -> Edition:
    """Return the edition of which labels are printed: without the names of people."""
    read = read_edition(studio)
    seen, _ = editions(read.studio, read.plans, (), (LAYOUTS,), TODAY)
    return seen


@pytest.fixture(scope="module")
def shared(edition: Edition) -> Labelled:
    (labelled,) = LABELS.all(replace(edition, plans=edition.plans[-1:]))
    return labelled


def test_products_of_one_size_fill_the_same_sheets(edition: Edition, shared: Labelled) -> None:
    labels = sum(len(plan.jars) for plan in shared.of)
    assert len(shared.of) == 2 and len(shared.labels) == labels
    (made,) = composed("labels", edition, edition.plans[-1])
    pages = made.html.count('<div class="page">')
    assert pages == ceil(EACH * labels / CELLS) < sum(ceil(EACH * len(plan.jars) / CELLS) for plan in shared.of)
    assert made.path.endswith("--and-others.pdf")


def test_what_a_student_takes_home_lies_side_by_side_in_the_order_of_the_roster(shared: Labelled) -> None:
    students = [one.jar.student for one in shared.labels]
    listed = [student for student in students if student is not None]
    assert listed == sorted(listed) and set(listed) == set(range(1, STUDENTS + 1))
    assert students[len(listed) :] == [None] * (len(students) - len(listed))
    of_the_first = [one.plan.name for one in shared.labels if one.jar.student == 1]
    assert of_the_first == ["Plain salts", "Plain salts", "Plain bar"]


def test_labels_of_another_size_have_sheets_of_their_own(edition: Edition) -> None:
    salts, bar = plan_labels(edition.studio, edition.plans[-1])
    assert len(on_shared_sheets([salts, bar])) == 1
    laid = bar.laid_out
    assert laid is not None
    other = replace(laid.sheet, corner=laid.sheet.width, name="another")
    assert len(on_shared_sheets([salts, replace(bar, laid_out=replace(laid, sheet=other))])) == 2
    renamed = replace(laid.sheet, name="another")
    assert len(on_shared_sheets([salts, replace(bar, laid_out=replace(laid, sheet=renamed))])) == 1
    assert on_shared_sheets([replace(salts, laid_out=None)]) == []


def test_spare_labels_are_of_each_kind_and_of_nobody(shared: Labelled) -> None:
    for plan in shared.of:
        *_, first, second, third = plan.jars
        jars = plan.jars[:-3]
        assert spare_labels(jars, 3) == (first, second, third) and spare_labels(jars, 0) == spare_labels((), 2) == ()
        assert {(one.student, one.guest, one.design, one.own_name) for one in (first, second, third)} == {(None, None, "", "")}
        kinds = {one.variant.chosen for one in jars}
        assert {one.variant.chosen for one in (first, second, third)} == kinds


def test_what_a_guest_wishes_of_a_label_is_printed_though_nobody_is_named(shared: Labelled) -> None:
    drawn = [cell.drawing for one in shared.labels if one.jar.student == 1 for cell in one.positions if cell.drawing]
    assert len(drawn) == 3 and {drawing.design.name for drawing in drawn} == {"slate"}
    assert all(one.jar.guest is None for one in shared.labels)


def labels_of(page: str) -> list[tuple[float, float]]:
    """Return the cells of a sheet as left and top in millimetres."""
    return [(float(x), float(y)) for x, y in re.findall(r'class="label" style="left:([\d.]+)mm;top:([\d.]+)mm', page)]


def test_one_students_labels_again_begin_where_those_of_the_date_ended(edition: Edition, shared: Labelled) -> None:
    seen = replace(edition, plans=edition.plans[-1:])
    (again,) = labels_again(seen, 2, None)
    taken = EACH * len(shared.labels)
    assert (
        again.count == 3 * EACH == len(labels_of(again.document.html))
        and again.begins == taken % CELLS + 1
        and again.of == "Plain salts and Plain bar"
    )
    first = labels_of(again.document.html)[0]
    assert first == pytest.approx(again.sheet.position(again.begins - 1), abs=0.01)
    (whole,) = composed("labels", edition, edition.plans[-1])
    told = re.findall(r'<p class="holds".*?</p>', again.document.html, re.DOTALL)
    assert told and all(line in whole.html for line in told)
    (moved,) = labels_again(seen, 2, 4)
    assert labels_of(moved.document.html)[0] == pytest.approx(moved.sheet.position(3), abs=0.01)
    with pytest.raises(NotOnTheSheetError, match=f"has {CELLS} labels"):
        list(labels_again(seen, 2, CELLS + 1))
    assert list(labels_again(seen, STUDENTS + 1, None)) == []


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("again") / "loft"
    copytree(SOUND, folder)
    profile = folder / "studio.yaml"
    profile.write_text(profile.read_text(encoding="utf-8").rstrip("\n") + "\nlabels: {sheet: letter 3 x 6, panels: 2}\n", encoding="utf-8")
    (folder / "classes/one-lotion/roster.csv").write_text("name,date\nAda Loom,2027-03-06\nBo Fenn,2027-03-06\n", encoding="utf-8")
    return folder


@pytest.mark.parametrize(
    ("words", "status", "said"),
    [
        # Six students and one spare container, each with a front and a back: the next of eighteen is the fifteenth.
        (["one-lotion", "--date", "2027-03-06", "--place", "2"], 0, "label 15 is free (row 5, column 3)"),
        (["one-lotion", "--date", "2027-03-06", "--place", "2", "--first", "8"], 0, "label 8 is free (row 3, column 2)"),
        (["one-lotoin", "--place", "2"], 2, 'there is no class "one-lotoin". Did you mean "one-lotion"?'),
        (["one-lotion", "--date", "2027-03-07", "--place", "2"], 2, "its dates are: 2027-03-06 10:00"),
        (["one-lotion", "--date", "2027-03-06", "--place", "7"], 2, "its 6 places are counted from 1"),
        (["one-lotion", "--date", "2027-03-06", "--place", "2", "--first", "19"], 2, "has 18 labels, and label 19 is not one of them"),
    ],
)
def test_the_command_says_what_it_wrote_or_why_not(
    sound: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], words: list[str], status: int, said: str
) -> None:
    to = tmp_path / "again"
    assert cli.main(["label", str(sound), *words, "--to", str(to), "--today", "2027-01-02"]) == status
    printed = capsys.readouterr()
    assert said in printed.out + printed.err
    assert "Loom" not in printed.out
    written = [path.name for path in to.iterdir()] if to.is_dir() else []
    assert written == (["one-lotion--2027-03-06--place-2--plain-lotion.pdf"] if status == 0 else [])


def test_a_label_that_the_engine_cannot_make_is_told(
    sound: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object) -> None:
        raise FolderError("one.pdf cannot be made.", "Take out what was written last.")

    monkeypatch.setattr("builder.press.press_one", fail)
    to = tmp_path / "again"
    assert cli.main(["label", str(sound), "one-lotion", "--place", "2", "--to", str(to), "--today", "2027-01-02"]) == cli.NOT_DONE
    assert "one.pdf cannot be made. Take out what was written last." in capsys.readouterr().err
    assert not to.exists()


def test_labels_that_are_held_back_are_not_made_again(sound: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    studio = tmp_path / "loft"
    copytree(sound, studio)
    copytree(SOUND.parent / "label-order-open", studio, dirs_exist_ok=True)
    to = tmp_path / "again"
    assert cli.main(["label", str(studio), "one-lotion", "--place", "2", "--to", str(to), "--today", "2027-01-02"]) == 1
    printed = capsys.readouterr()
    assert "label-order-open (stop)" in printed.err and "nothing was written" in printed.out and not to.exists()
