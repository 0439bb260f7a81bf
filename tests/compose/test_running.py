"""How a class is run, as its documents say it: the format in sentences, who watches, the check list, reminders at the bench, the plan."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from builder import cli
from builder.compose.addresses import Address
from builder.compose.dates.time_words import clock_from, time_strip
from builder.compose.document_table import copies_to_print
from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.compose.teaching.format_words import how_it_is_made, taken_home
from builder.compose.teaching.lesson_flow import FlowSource, compose_flow
from builder.compose.teaching.pieces import writer_of
from builder.compose.teaching.plan_text import plan_lines
from builder.compose.teaching.preparation_words import check_groups
from builder.compose.teaching.seating import view_seating
from builder.compose.teaching.staff_words import after_rows, ahead_rows
from builder.compose.teaching.supervision_words import asks, basis
from builder.library import LAYOUTS
from builder.model.document import Document, Folder
from builder.model.teaching.class_plan import ClassPlan
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.composing import composed
from tests.making import sure
from tests.page_text import words_of

SOUND = Path(__file__).parent.parent / "findings" / "_sound"


def plain(texts: Iterable[str]) -> list[str]:
    return [text.replace("\u00a0", " ") for text in texts]


def page(document: Document) -> str:
    return words_of(document.html)


def test_sentences_say_what_is_watched_done_chosen_filled_and_taken_home(edition: Edition) -> None:
    sheet = edition.plans[0]
    assert plain(how_it_is_made(edition.studio, sheet)) == [
        "You make the plain salts with the others, in one pot for all.",
        "You watch the teacher make the plain bar, with every step explained.",
        "Only the teacher handles lye and fresh soap.",
        "You choose scent yourself.",
        "You fill 2 jars of your own.",
    ]
    assert taken_home(sheet) == "You take home a jar and a bar."


def test_the_class_page_says_it_too(document: Callable[[str], str]) -> None:
    assert "You watch the teacher make the plain bar, with every step explained." in document("site/classes/first.html")


def test_the_teachers_sheet_says_why_and_who_watches_whom(document: Callable[[str], str]) -> None:
    def text_of(name: str) -> str:
        return words_of(document(f"print/first/2027-03-06/{name}.pdf"))

    text = text_of("teacher")
    for words in ("Teacher: groups 1 and 2. Assistant: group 3.", "9:45 AM D Get ready ahead, 15 min"):
        assert words in text
    text = text_of("why-this-format")
    for words in (
        "Why this format",
        "For it speaks",
        "common practice, no source",
        "Teacher: groups 1 and 2; Assistant: group 3",
        "Who weighs what",
    ):
        assert words in text


def test_numbers_of_the_studios_own_stand_beside_those_that_they_take_the_place_of(tmp_path: Path) -> None:
    policy = "teaching policy:\n  any work of the hands: {students to a supervisor: 30}\n"
    folders = write_studio(tmp_path / "plain"), write_studio(tmp_path / "own", studio_yaml=FILES["studio.yaml"] + policy)
    sheets = [read_edition(folder).plans[0] for folder in folders]
    before, after = (next(rule for rule in one.supervision.rules if rule.key == "any work of the hands") for one in sheets)
    assert asks(after, 16).startswith("1 adult for 30 students")
    assert basis(after, 16) == f"the studio's own numbers, in place of: {asks(before, 16)}; {basis(before, 16)}"
    assert "own" not in basis(before, 16)


def test_each_bench_stands_on_the_plan_once_and_apart_from_the_others(edition: Edition) -> None:
    for sheet in edition.plans:
        plan = view_seating(sheet)
        benches = [box for box in sure(plan).boxes if not box.strong]
        assert len(benches) == sheet.groups
        for one in sure(plan).boxes:
            x, y, width, height = map(int, sure(plan).view_box.split())
            assert x <= one.x and y <= one.y and one.x + one.width <= x + width and one.y + one.height <= y + height
            for other in sure(plan).boxes:
                apart = (
                    one.x + one.width <= other.x
                    or other.x + other.width <= one.x
                    or one.y + one.height <= other.y
                    or other.y + other.height <= one.y
                )
                assert one == other or apart
        assert set(plain(text.words for text in sure(plan).texts)) >= {
            f"Group {sheet.groups}: {sheet.last_group} {'person' if sheet.last_group == 1 else 'people'}"
        }


CUPS = """# The first class

You make two things.

## Weigh ahead (ahead, 15 min, class only, bar)

1. Weigh {olive oil} of olive oil into a cup for each group.

## Pour the oils (students, 60 min, bar, no raw soap)

1. Weigh {lye water} of cold water, and pour in the {olive oil} of olive oil from its cup.
"""


def test_what_is_weighed_ahead_into_cups_is_on_the_check_list_and_marked_on_the_bench_card(tmp_path: Path) -> None:
    edition = read_edition(write_studio(tmp_path, classes__first__lesson_md=CUPS))
    sheet = edition.plans[0]
    groups = {group.title: plain(group.lines) for group in check_groups(edition, sheet, copies_to_print(edition, sheet))}
    (cups,) = [line for line in groups["Weigh ahead, and mark"] if "olive oil" in line]
    assert cups.startswith("Weigh ahead, 2 times: olive oil ") and cups.endswith("Mark each cup with what is in it, and how much")
    cards = page(composed("bench cards", edition, sheet)[0])
    assert "Olive oil: ready in a marked cup" in cards
    assert "Water" in cards and "Water: ready" not in cards


def test_the_plan_shows_an_eyewash_only_where_a_rule_asks_for_one(edition: Edition) -> None:
    sheet = edition.plans[0]
    assert "Sink and eyewash" in {text.words for text in sure(view_seating(sheet)).texts}
    without = view_seating(replace(sheet, preparation=replace(sheet.preparation, kit=("cloths",))))
    assert "Sink" in {text.words for text in sure(without).texts}
    assert "eyewash" not in sure(without).description


def test_the_check_list_is_in_the_order_of_doing_and_counts_the_sheets(edition: Edition) -> None:
    sheet = edition.plans[1]
    groups = {group.title: plain(group.lines) for group in check_groups(edition, sheet, copies_to_print(edition, sheet))}
    assert list(groups) == [
        "Print", "Before the class, on the clock", "Set out, in all", "Weigh ahead, and mark", "On the demo table",
        "For each person", "Safety, in reach", "Before the doors open", "When all have gone",
    ]  # fmt: skip
    assert "Steps at the bench: 3 copies" in groups["Print"]
    assert "Take-home sheet, plain salts: 5 copies (500 g)" in groups["Print"]
    assert "Scent and colour, cards for the table: 1 set for each table" in groups["Print"]
    assert not [line for line in groups["Print"] if line.startswith("Tags")]
    with_tags = replace(sheet, studio_class=replace(sheet.studio_class, labels=replace(sheet.studio_class.labels, tags=True)))
    printed = next(group.lines for group in check_groups(edition, with_tags, copies_to_print(edition, with_tags)) if group.title == "Print")
    assert f"Tags: {sheet.students}, printed on both sides" in printed
    in_all = groups["Set out, in all"]
    for made in sheet.made:
        said = next(line for line in in_all if line.startswith(f"For {made.batch.recipe.name}: "))
        for one in made.needed:
            weighings = [(each, w) for each in made.batches for w in each.batch.grams.weighed if w.line.name == one.ingredient]
            whole = sum(each.copies * w.mass.grams for each, w in weighings)
            stands = Fraction(sure(re.search(rf"\b{re.escape(one.ingredient.lower())} ([\d.]+)\s?g", said.lower()))[1])
            assert whole <= stands < whole + 1
    assert len([line for line in in_all if line.startswith("Scales for the batches, one at each bench that weighs: ")]) == 1
    assert "7 × chemical splash goggles" in groups["For each person"]
    text = page(composed("check list", edition, sheet)[0])
    assert all(line in text for lines in groups.values() for line in lines)


def test_what_rests_is_done_days_before_and_nothing_is_weighed_twice(tmp_path: Path) -> None:
    lesson = FILES["classes/first/lesson.md"].replace("(ahead, 15 min, class only)", "(ahead, 2 days before, 15 min, class only)")
    edition = read_edition(write_studio(tmp_path, classes__first__lesson_md=lesson))
    (row,) = ahead_rows(edition.plans[0], "en_US")
    assert row.when.replace("\u00a0", " ") == "2 days before, Thursday, February 4, 2027"


AFTER = """
## Wash up (after, 20 min, class only)

1. Wash the bowls.

## Turn it out (after, 2 days later, 30 min, bar)

1. Turn the block out and cut {portion} bars.
"""


@pytest.fixture(scope="module")
def after(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    folder = tmp_path_factory.mktemp("after")
    return read_edition(write_studio(folder, classes__first__lesson_md=FILES["classes/first/lesson.md"].rstrip() + "\n" + AFTER))


# The class begins at 10:00 on Saturday, February 6 and lasts an hour, so that the staff go on at 11:00; two days later it is Monday.
def test_what_staff_do_after_the_class_has_its_time_or_its_day(after: Edition) -> None:
    sheet = after.plans[0]
    rows = [(*plain([row.when]), row.title, *plain([row.minutes])) for row in after_rows(sheet, "en_US")]
    assert rows == [("11:00 AM", "Wash up", "20 min"), ("2 days later, Monday, February 8, 2027", "Turn it out", "30 min")]
    undated = replace(sheet, date=None)
    assert plain(row.when for row in after_rows(undated, "en_US")) == ["when the class has ended", "2 days later"]
    assert {group.title: plain(group.lines) for group in check_groups(after, sheet, ())}["After the class"] == [
        "11:00 AM: Wash up, 20 min", "2 days later, Monday, February 8, 2027: Turn it out, 30 min",
    ]  # fmt: skip
    plan = list(plan_lines(after.studio, sheet))
    assert plan[plan.index("After the class:") + 1 :] == [
        "  11:00 AM  Wash up (20 min)", "  2 days later, Monday, February 8, 2027  Turn it out (30 min)",
    ]  # fmt: skip


def test_what_comes_after_is_for_staff_and_for_home_and_for_nobody_at_the_bench(after: Edition) -> None:
    made = compose_documents(*editions(after.studio, after.plans, (), (LAYOUTS,), TODAY)).documents
    texts = {document.path: page(document) for document in made}
    teacher = texts["first/2027-02-06/teacher.pdf"]
    assert "Wash up 11:00 AM, after, 20 min" in teacher
    assert "2 days later, Monday, February 8, 2027, after, 30 min" in teacher
    telling = {path for path, text in texts.items() if "Turn it out" in text}
    assert {path.rpartition("/")[2].partition("-")[0].partition(".")[0] for path in telling} == {
        "teacher",
        "assistants",
        "checklist",
        "take",
    }
    home = next(text for path, text in texts.items() if path.endswith("take-home-bar--500-g-of-oils.pdf"))
    assert "Turn it out 2 days later, about 30 minutes" in home
    assert "Wash up" not in home
    assert not [path for path in telling if "salts" in path]


def test_what_comes_after_takes_no_time_of_the_class_and_decides_no_format(after: Edition, edition: Edition) -> None:
    one, other = after.plans[0], edition.plans[0]
    assert [(timed.begins, timed.ends) for timed in one.timeline] == [(timed.begins, timed.ends) for timed in other.timeline]
    assert one.teaching == other.teaching
    assert one.supervision == other.supervision


def test_a_wait_stands_on_the_bar_only_for_what_nobody_fills(tmp_path: Path) -> None:
    lesson = FILES["classes/first/lesson.md"].replace(
        "## Mix the salts (students, 40 min)",
        "## It sets (waiting, 30 min)\n\n## Talk (teacher, 10 min, in the wait)\n\n## Mix the salts (students, 10 min)",
    )
    edition = read_edition(write_studio(tmp_path, classes__first__lesson_md=lesson))
    strip = time_strip(edition.plans[0], clock_from(None, "en_US"))
    assert [(one.who, one.left, one.width) for one in sure(strip).segments] == [
        ("teacher", "0%", "33.333%"), ("waiting", "50%", "33.333%"), ("teacher", "33.333%", "16.667%"), ("students", "83.333%", "16.667%"),
    ]  # fmt: skip
    home = next(d for d in composed("take-home page", edition) if d.path.endswith("salts--500-g.html"))
    assert "Work: about 25 minutes. Waiting: 30 minutes." in page(home)


def test_a_caution_comes_back_whole_in_each_part(edition: Edition) -> None:
    sheet = edition.plans[0]
    part = next(one for one in sheet.studio_class.lesson.parts if one.title == "Watch the lye")
    sources = [FlowSource(part, sheet.made[1].batch), FlowSource(part, sheet.made[1].batch)]
    writer = writer_of(edition, Address(Folder.PRINT, "steps.pdf"), "classes/first")
    first, second = compose_flow(edition.studio, sources, writer).parts
    assert [block for block in second.blocks if block.kind == "caution"] == [b for b in first.blocks if b.kind == "caution"] != []
    assert second.warns == first.warns != ()


def test_bench_cards_name_what_can_maim_in_a_line(document: Callable[[str], str]) -> None:
    cards = BeautifulSoup(document("print/first/2027-03-06/bench-cards.pdf"), "html.parser")
    sections = {sure(section.h2).get_text(): section for section in cards("section")}
    said = {name: [" ".join(line.get_text(" ").split()) for line in one.select(".reminder")] for name, one in sections.items()}
    assert said["Plain salts"] == []  # Neat scent oils are a warning, and stand whole in the steps.
    assert said["Plain bar"] == ["DANGER Lye burns. Fresh soap still burns. Goggles, gloves, and the steps sheet first."]


def test_the_plan_tells_format_supervision_and_clock(edition: Edition) -> None:
    text = "\n".join(plan_lines(edition.studio, edition.plans[1]))
    for words in (
        "For this format speaks",
        "Supervision: 5 students come. 2 adults can watch",
        "Assistant: group 3",
        "10:20 AM  Mix the salts",
    ):
        assert words in text


@pytest.mark.parametrize(
    ("arguments", "status"),
    [(["one-lotion"], 0), (["one-lotion", "--date", "2027-03-06"], 0), (["one-lotoin"], 2), (["one-lotion", "--date", "2020-01-01"], 2)],
)
def test_the_plan_command(capsys: pytest.CaptureFixture[str], arguments: Sequence[str], status: int) -> None:
    assert cli.main(["plan", str(SOUND), *arguments, "--today", "2027-01-15"]) == status
    printed = capsys.readouterr()
    assert ("Who watches whom" in printed.out) == (status == 0)
    assert re.search(r"Traceback", printed.err) is None


def test_a_rule_on_minors_asks_for_two_adults_only_where_minors_may_come(edition: Edition) -> None:
    rule = edition.studio.supervision["any work of the hands"]
    assert asks(rule, 17) == "1 adult for 10 students, 2 adults at least, from 6 years, at most 24 students"
    assert asks(rule, 18) == "1 adult for 24 students, from 6 years, at most 24 students"


def locked_away(edition: Edition, sheet: ClassPlan) -> list[str]:
    """Return what the check list says is locked away when all have gone."""
    lines = next(group.lines for group in check_groups(edition, sheet, ()) if group.title == "When all have gone")
    assert {"Whatever was switched on or lit is off, and unplugged", "Gear washed, counted and hung up"} <= set(lines)
    return [line for line in lines if "locked away" in line]


def test_what_is_locked_away_is_what_the_class_has(edition: Edition) -> None:
    sheet = edition.plans[1]
    salts, bar = ([one for one in sheet.made if bool(one.batch.recipe.lye) is has_lye] for has_lye in (False, True))
    assert salts and bar
    assert locked_away(edition, sheet) == ["Lye and scent oils locked away"]
    assert locked_away(edition, replace(sheet, made=tuple(salts))) == ["Scent oils locked away"]
    assert locked_away(edition, replace(sheet, made=tuple(bar))) == ["Lye locked away"]
    no_tools = replace(sheet.preparation, at_benches=(), at_demo=())
    assert locked_away(edition, replace(sheet, made=(), preparation=no_tools)) == []
