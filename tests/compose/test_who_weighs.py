"""All documents of a date agree on who weighs what: bench cards, steps, teacher's sheet, check list, plan, each read against the plan."""

import os
import re
from collections.abc import Sequence
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from builder.compose.edition import Edition
from builder.compose.teaching.plan_text import plan_lines
from builder.compose.teaching.seating import view_seating
from builder.compose.templates import Templates
from builder.library import CONTENT, LAYOUTS
from builder.model.dates.studio_class import BatchFor, Format
from builder.model.recipe.quantity import Mass
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.weighing_plan import FoundAs, Weigher, WeighingTask
from builder.pipeline import check
from builder.read.studios import read_studio
from builder.reckon import reckon_classes
from tests import published
from tests.compose.conftest import TODAY
from tests.composing import composed
from tests.findings_studio import write_class
from tests.making import sure
from tests.page_text import words_of
from tests.whole_run import LONG

SCRUB = """
## Weigh the sugar ({sugar}, 20 min)

1. Weigh {{white sugar}} of sugar.

## Weigh the oil ({oil}, 20 min)

1. Weigh {{sunflower oil}} of oil and {{vitamin E}} of vitamin E.
2. Weigh {{phenoxyethanol and ethylhexylglycerin blend}} of the preservative.

## Fill (together, 20 min)

1. Fill {{portion}} into each jar.
"""
SOAP = """
## Mix the lye ({lye})

1. Stir {{lye}} of sodium hydroxide into {{lye water}} of water.

## Make soap (students, 30 min)

1. Weigh {{olive oil}} of olive oil and {{coconut oil}} of coconut oil.
2. Pour {{lye solution}} of the lye into the oils.
"""
READY = """
## Weigh the clay (ahead, 20 min, class only)

1. Weigh {{kaolin clay}} of clay into a cup.

## Make soap (students, 60 min, class only)

1. Weigh {{olive oil}} of olive oil and {{coconut oil}} of coconut oil.
2. Pour {{sodium hydroxide}} of the one lye and {{potassium hydroxide}} of the other lye into a jug with {{lye water}} of water.
"""
# Name of the class: recipe, batch, lesson.
MADE_UP = {
    "one-group-each": ("scrub", "class", SCRUB.format(sugar="students, group 2", oil="students, group 3")),
    "teacher-and-together": ("scrub", "class", SCRUB.format(sugar="teacher", oil="together")),
    "each-group": ("scrub", "group", SCRUB.format(sugar="students", oil="teacher")),
    "each-student": ("scrub", "student", SCRUB.format(sugar="ahead", oil="together")),
    "lye-ahead": ("plain-bar", "group", SOAP.format(lye="ahead, 30 min")),
    "lye-in-class": ("plain-bar", "group", SOAP.format(lye="teacher, 30 min")),
    "two-lyes": ("two-lyes", "group", READY.format()),
}


def number(mass: Mass) -> str:
    return f"{float(mass.grams):g}"


def as_shown(mass: Mass) -> str:
    """Return what matches a number of grams with as many noughts at its end as a scale shows."""
    return re.escape(number(mass)) + ("0*" if "." in number(mass) else r"(?:\.0+)?")


@pytest.fixture(scope="module")
def made_up_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("weighing") / "studio"
    for key, (recipe, batch, lesson) in MADE_UP.items():
        write_class(folder, key, recipe, BatchFor(f"one for {'the' if batch == 'class' else 'each'} {batch}"), lesson)
    return folder


@pytest.fixture(scope="module")
def made_up(made_up_folder: Path) -> Edition:
    return edition_of(made_up_folder)


def test_sound_classes_are_silent(made_up_folder: Path) -> None:
    assert [finding.wrong for finding in check(made_up_folder, on=TODAY).findings if finding.stops] == []


def edition_of(folder: Path) -> Edition:
    studio, findings = read_studio(folder, CONTENT)
    assert findings == []
    sheets = reckon_classes(studio, studio.classes.values(), on=TODAY)
    return Edition(studio, sheets, (), Templates((LAYOUTS,)), TODAY)


@pytest.fixture(scope="module")
def example() -> Edition:
    return published.edition()


@pytest.mark.long(sample=True)
def test_of_the_example_all_documents_agree(example: Edition) -> None:
    """Of the first date of each class, with `--long` of all of them."""
    first = {sheet.studio_class.key: sheet for sheet in reversed(example.plans)}
    for sheet in example.plans if LONG in os.environ else first.values():
        agree(example, sheet)


@pytest.mark.parametrize("key", MADE_UP)
def test_of_made_up_classes_all_documents_agree(made_up: Edition, key: str) -> None:
    sheets = [sheet for sheet in made_up.plans if sheet.studio_class.key == key]
    assert len(sheets) == 2 and all(sheet.weighing.tasks for sheet in sheets)
    for sheet in sheets:
        agree(made_up, sheet)


def agree(edition: Edition, sheet: ClassPlan) -> None:
    """Hold each document of a date against its weighing plan."""
    plan = sheet.weighing
    assert {(task.recipe, task.purpose) for task in plan.tasks} == {
        (made.batch.recipe.name, planned.purpose) for made in sheet.made for planned in made.batches
    }
    (one,) = composed("reasons for the format", edition, sheet)
    teacher = BeautifulSoup(one.html, "html.parser")
    rows = [
        [cell.get_text(" ").replace("\u00a0", " ") for cell in row.find_all(["th", "td"])] for row in teacher.select("table.cups tbody tr")
    ]
    terminal = "\n".join(plan_lines(edition.studio, sheet))
    (one,) = composed("check list", edition, sheet)
    checklist = words_of(one.html)
    for task in plan.tasks:
        (row,) = [row for row in rows if said_in(row, task)]
        assert how(task) in row[0].split(":")[0]
        assert row[2] == ("once" if task.pots == 1 else f"{task.pots} times")
        assert f"{row[0]} ({row[1]}, {row[2]}): {row[3]}" in terminal
        named, weight = re.escape(task.ingredient[1:]), as_shown(task.each)
        cups = re.findall(
            rf"(\d+) (?:cups? or jugs? of {named}, {weight} g in|times?: (?:[^:]*, )?{named} {weight} g[,.])",
            checklist.replace(task.ingredient[0].lower() + task.ingredient[1:], task.ingredient[1:]),
        )
        alike = [one for one in plan.tasks if (one.recipe, one.ingredient, one.each) == (task.recipe, task.ingredient, task.each)]
        assert sorted(map(int, cups)) == sorted(one.pots for one in alike if is_ready(one))
    if sheet.groups and sheet.format is not Format.DEMO:
        (cards,), (steps,) = (composed(name, edition, sheet) for name in ("bench cards", "steps at the bench"))
        cards_agree(sheet, BeautifulSoup(cards.html, "html.parser"))
        steps_agree(sheet, BeautifulSoup(steps.html, "html.parser"))
        said = sure(view_seating(sheet)).description
        told = {int(n) for n in re.findall(r"(?:Group|Place) (\d+) weighs for all", said)}
        assert told == (set(plan.groups_that_weigh_for_all()) if sheet.groups > 1 else set())
    lye = [one for one in plan.solutions if one.ahead]
    assert checklist.count("stirred slowly into") == len(lye)
    for solution in lye:
        for bottles in solution.bottles:
            assert re.search(
                rf"{bottles.number} bottles? of [a-z ]+ solution, [\d.]+ %, (at least )?{re.escape(number(bottles.each))} g in", checklist
            )


def is_ready(task: WeighingTask) -> bool:
    """Tell whether a cup of it stands ready for each group or student; what the teacher weighs for her own batch does not."""
    return task.found_as is FoundAs.CUP and (task.part is None or task.purpose in ("group", "student"))


def said_in(row: Sequence[str], task: WeighingTask) -> bool:
    return (
        row[1].startswith(task.recipe)
        and any(re.fullmatch(f"{re.escape(task.ingredient)} {as_shown(task.each)} g", one) for one in row[3].split("; "))
        and whose(task) == row[1][len(task.recipe) :]
    )


def whose(task: WeighingTask) -> str:
    return {"class": "", "group": ", for each group", "student": ", for each student", "teacher": ", the teacher's own"}[task.purpose]


def how(task: WeighingTask) -> str:
    """Return a word that the row of a weighing begins with."""
    if task.weigher is Weigher.ONE_GROUP:
        return f" {task.group}, once for all"
    if task.weigher is Weigher.TOGETHER:
        return "together" if task.purpose == "class" else f"each {task.purpose}, with the teacher"
    return {
        Weigher.AHEAD: "ahead",
        Weigher.TEACHER: "staff" if task.purpose == "teacher" and sure(task.part).by_hand else "the teacher",
        Weigher.AFTER: "staff, after the class",
        Weigher.EACH_POT: f"each {task.purpose}",
    }[task.weigher]


def cards_agree(sheet: ClassPlan, cards: BeautifulSoup) -> None:
    """Of every pot a bench card lists all that goes in, and whoever else weighs it is named; of one pot for all what this group weighs."""
    for group, card in enumerate(cards.select("article.card"), start=1):
        for made, section in zip(sheet.made, card.select("section"), strict=True):
            purpose = made.batches[0].purpose
            tasks = sheet.weighing.of(made.batch.recipe.name, purpose)
            mine = [task for task in tasks if purpose != "class" or task.group == group]
            listed = [one.get_text(" ").replace("\u00a0", " ") for one in section.select(".phases li")]
            solid = [task for task in mine if task.found_as is not FoundAs.DISSOLVED]
            solutions = [
                one
                for one in sheet.weighing.solutions_of(made.batch.recipe.name)
                if not one.ready_mixed and mine and one.bottles[0].purpose == purpose
            ]
            assert len(listed) == len(solid) + (len(solutions) if len(solid) < len(mine) else 0)
            for task in solid:
                (line,) = [line for line in listed if reads(line) == (float(task.each.grams), task.ingredient)]
                if task.weigher in (Weigher.EACH_POT, Weigher.ONE_GROUP, Weigher.TOGETHER) and task.found_as is FoundAs.NOTHING:
                    assert line.endswith(task.ingredient) or ": press" in line or "strokes" in line
                else:
                    assert re.search("marked cup|marked bottle|the teacher weighs it|staff weigh it", line)
            if len(solid) < len(mine):
                text = " ".join(listed)
                assert not re.search(r"g (Sodium|Potassium) hydroxide(?! solution)", text)
                assert all(f"{number(one.solution)} g" in text for one in solutions)


def reads(line: str) -> tuple[float, str]:
    """Return the number of grams and the name with which a line of a bench card begins."""
    amount, name = sure(re.fullmatch(r"([\d. ]+) g (.*)", line.strip())).groups()
    return float(amount.replace(" ", "")), name.split(":")[0].strip()


def steps_agree(sheet: ClassPlan, steps: BeautifulSoup) -> None:
    """What is weighed once for all is said to be, on the steps that every group has."""
    by_title = {
        section.h2.find_all(string=True, recursive=False)[-1].strip(): section.get_text(" ")
        for section in steps.select("section")
        if section.h2
    }
    for timed in sheet.timeline:
        tasks = sheet.weighing.in_part(timed.part)
        if timed.part.by_hand and any(task.purpose == "class" for task in tasks):
            text = " ".join(by_title[timed.part.title].split()).replace("\u00a0", " ")
            group = next((task.group for task in tasks if task.group and timed.part.group), None)
            assert (f"{group} does this once, for all" if group else "This is weighed once, for all") in text
