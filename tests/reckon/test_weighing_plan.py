"""Who weighs what in a class, and the lye that staff make for it: what is mixed ahead is, to the mol, what all pots take."""

from collections.abc import Set as AbstractSet
from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.library import CONTENT
from builder.model.dates.studio_class import BatchFor, ClassDate
from builder.model.hazard import Hazard
from builder.model.recipe.column import Role
from builder.model.recipe.quantity import sum_masses
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.pot_for import PotFor
from builder.model.teaching.weighing_plan import FoundAs, LyeMistaken, Weigher
from builder.read.studios import read_studio
from builder.reckon.supplies.costs import cost_of_class
from builder.reckon.teaching.classes import reckon_class
from tests.compose.test_who_weighs import READY, SCRUB, SOAP
from tests.findings_studio import write_class
from tests.making import KOH, NAOH, share, sure

MOLAR = {"Sodium hydroxide": NAOH, "Potassium hydroxide": KOH}  # g/mol, IUPAC 2021 weights, as on the cards.


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Studio:
    folder = tmp_path_factory.mktemp("plan") / "studio"
    write_class(folder, "two-lyes", "two-lyes", BatchFor.GROUP, READY.format())
    studio, findings = read_studio(folder, CONTENT)
    assert findings == []
    return studio


def lesson_of(tmp_path: Path, recipe: str, batch_for: BatchFor, lesson: str) -> Studio:
    folder = tmp_path / "studio"
    write_class(folder, "one", recipe, batch_for, lesson)
    studio, findings = read_studio(folder, CONTENT)
    assert findings == []
    return studio


def sheet_of(studio: Studio, students: int = 7) -> ClassPlan:
    (one,) = studio.classes.values()
    return reckon_class(studio, one, ClassDate(datetime(2027, 3, 6, 10), students))[0]


def ready_mixed(studio: Studio, koh: int, strength: int, superfat: int, batch_for: BatchFor, group_size: int, spare: int) -> Studio:
    recipe = studio.recipes["two-lyes"]
    sodium, potassium = sure(recipe.lye).alkalis
    alkalis = (replace(sodium, share=1 - Fraction(koh, 100)), replace(potassium, share=Fraction(koh, 100)))
    plan = replace(sure(recipe.lye), alkalis=alkalis, superfat=share(superfat), ready_mixed=share(strength))
    one = studio.classes["two-lyes"]
    made = replace(one.makes[0], batch_for=batch_for, spare=spare)
    return replace(
        studio,
        recipes={**studio.recipes, "two-lyes": replace(recipe, lye=plan)},
        classes={"two-lyes": replace(one, makes=(made,), group_size=group_size)},
    )


# What is mixed ahead of each alkali, poured into all pots, is the mol of hydroxide that all batches take, with the tenth to spare that the
# sheet says; weighing rounds the solution to its scale and the solid down, which is all by which it may differ.
@given(
    st.integers(1, 99), st.integers(30, 45), st.integers(3, 15), st.sampled_from(list(BatchFor)), st.integers(1, 3), st.integers(0, 3),
    st.integers(1, 12),
)  # fmt: skip
def test_what_is_mixed_ahead_is_the_mol_of_all_batches(
    studio: Studio, koh: int, strength: int, superfat: int, batch_for: BatchFor, group_size: int, spare: int, students: int
) -> None:
    changed = ready_mixed(studio, koh, strength, superfat, batch_for, group_size, spare)
    sheet = sheet_of(changed, students)
    (made,) = sheet.made
    assert [lye.alkalis[0][0] for lye in made.ready_mixed] == list(MOLAR)
    for lye in made.ready_mixed:
        ((alkali, solid),), ((_, water),) = lye.alkalis, lye.liquids
        purity = next(one.typical for one in sure(made.batch.grams.lye).purities if one.alkali == alkali)
        per_gram = purity * solid.grams / MOLAR[alkali] / (solid.grams + water.grams)
        poured = sum(per_gram * bottles.each.grams * bottles.number for bottles in lye.bottles)
        needed = sum(
            w.mass.grams * sure(w.line.strength) / MOLAR[alkali] * planned.copies
            for planned in made.batches
            for w in planned.batch.grams.weighed
            if w.line.role is Role.ALKALI and w.line.ingredient.name == alkali
        )
        # The pocket scale holds 200 g, a vessel of 10 g and 0.4 of what is in it among them.
        division = Fraction(1, 100) if lye.solution.grams * Fraction("1.4") + 10 <= 200 else Fraction(1, 10)
        assert needed - poured >= 0  # Never stronger than stated.
        assert (needed - poured) / needed <= division / solid.grams
        assert lye.solution.grams >= sum(bottles.each.grams * bottles.number for bottles in lye.bottles)
        assert abs(lye.solution.grams - needed * MOLAR[alkali] / lye.strength * Fraction(11, 10)) <= division
        assert {bottles.purpose: bottles.number for bottles in lye.bottles} == {p.purpose: p.copies for p in made.batches}


def test_both_alkalis_are_bought(studio: Studio) -> None:
    sheet = sheet_of(studio)
    needs = {need.name: need.used for need in cost_of_class(studio, sheet).needs}
    for lye in sheet.made[0].ready_mixed:
        ((alkali, solid),) = lye.alkalis
        assert needs[alkali] == solid.grams


@pytest.mark.parametrize(
    ("lesson", "who", "found_as", "in_hands"),
    [
        (SOAP.format(lye="ahead, 30 min"), Weigher.AHEAD, FoundAs.DISSOLVED, {Hazard.CAUSTIC}),
        (SOAP.format(lye="teacher, 30 min"), Weigher.TEACHER, FoundAs.DISSOLVED, {Hazard.CAUSTIC}),
        (SOAP.format(lye="students, 30 min"), Weigher.EACH_POT, FoundAs.NOTHING, {Hazard.CAUSTIC, Hazard.DRY_LYE}),
        # Weighed dry into cups ahead, and dissolved by the students.
        (
            "\n## Weigh (ahead, 30 min)\n\n1. Weigh {lye} of lye into a lidded cup.\n"
            "\n## Soap (students, 60 min)\n\n1. Stir the lye into {lye water} of water.\n2. Add {olive oil} and {coconut oil}.\n",
            Weigher.AHEAD,
            FoundAs.CUP,
            {Hazard.CAUSTIC, Hazard.DRY_LYE},
        ),
        # Set out ahead, and dissolved by the teacher in class.
        (
            "\n## Set out (ahead, 10 min)\n\n1. Weigh {lye} of lye and {lye water} of water.\n"
            "\n## Lye (teacher, 20 min)\n\n1. Stir {lye} of lye into {lye water} of water.\n"
            "\n## Soap (students, 60 min)\n\n1. Pour {lye solution} into {olive oil} and {coconut oil}.\n",
            Weigher.TEACHER,
            FoundAs.DISSOLVED,
            {Hazard.CAUSTIC},
        ),
        # No part names it: never dry at the bench.
        ("\n## Soap (students, 60 min)\n\n1. Add {olive oil} to {coconut oil}.\n", Weigher.AHEAD, FoundAs.DISSOLVED, set()),
    ],
)
def test_what_staff_dissolve_is_a_solution_from_then_on(
    tmp_path: Path, lesson: str, who: Weigher, found_as: FoundAs, in_hands: AbstractSet[Hazard]
) -> None:
    studio = lesson_of(tmp_path, "plain-bar", BatchFor.GROUP, lesson)
    sheet = sheet_of(studio)
    (task,) = [task for task in sheet.weighing.of("Plain bar", PotFor.GROUP) if task.caustic]
    assert (task.weigher, task.found_as) == (who, found_as)
    hazards = {hazard for part in sheet.supervision.parts if part.by_hand for hazard in part.hazards}
    assert hazards & {Hazard.CAUSTIC, Hazard.DRY_LYE} == in_hands
    lye = [w for w in sheet.made[0].batch.grams.weighed if w.line.role in (Role.ALKALI, Role.LYE_WATER)]
    solutions = [one for one in sheet.weighing.solutions if one.bottles[0].purpose == "group"]
    if found_as is FoundAs.DISSOLVED:
        (solution,) = solutions
        assert solution.solution == sum_masses(w.mass for w in lye)
        assert (solution.times, solution.bottles[0].number, solution.bottles[0].each) == (4, 4, solution.solution)
        assert solution.strength == sure(sheet.made[0].batch.grams.lye).concentration == pytest.approx(0.33, abs=0.001)
    else:
        assert solutions == []
    assert sheet.weighing.mistaken == ()


@pytest.mark.parametrize("name", ["lye", "sodium hydroxide", "lye water", "water"])
def test_what_is_dissolved_is_not_named_dry_any_more(tmp_path: Path, name: str) -> None:
    lesson = SOAP.format(lye="ahead, 30 min").replace("{lye solution}", f"{{{name}}}")
    (mistaken,) = sheet_of(lesson_of(tmp_path, "plain-bar", BatchFor.GROUP, lesson)).weighing.mistaken
    assert (mistaken.how, mistaken.name.text) == (LyeMistaken.DISSOLVED, name)


# The published rule of the definitions: lye concentration = lye / (lye + water). The bottle of ready-mixed lye holds no other water.
def test_the_solution_of_ready_mixed_lye_is_what_its_bottles_hold(tmp_path: Path) -> None:
    lesson = READY.format().replace("{sodium hydroxide} of the one lye and {potassium hydroxide} of the other", "{lye solution} of lye")
    studio = lesson_of(tmp_path, "two-lyes", BatchFor.GROUP, lesson)
    (mistaken,) = sheet_of(studio).weighing.mistaken
    assert (mistaken.how, mistaken.ingredients) == (LyeMistaken.TWO_ALKALIS, ("Sodium hydroxide", "Potassium hydroxide"))


@pytest.mark.parametrize(
    ("sugar", "students", "weigher", "group"),
    [
        ("students, group 2", 7, Weigher.ONE_GROUP, 2),
        ("students, group 3", 4, Weigher.ONE_GROUP, 1),  # Two groups come, so that the numbers begin anew.
        ("students, group 2", 2, Weigher.ONE_GROUP, 1),
        ("students", 2, Weigher.ONE_GROUP, 1),  # The only group that comes.
        ("together", 7, Weigher.TOGETHER, None),
        ("teacher", 7, Weigher.TEACHER, None),
        ("ahead", 7, Weigher.AHEAD, None),
    ],
)
def test_of_one_pot_for_all_somebody_weighs_once(tmp_path: Path, sugar: str, students: int, weigher: Weigher, group: int | None) -> None:
    sheet = sheet_of(lesson_of(tmp_path, "scrub", BatchFor.CLASS, SCRUB.format(sugar=sugar, oil="together")), students)
    task = sheet.weighing.tasks[0]
    assert (task.ingredient, task.weigher, task.group, task.pots) == ("White sugar", weigher, group, 1)
    assert sheet.weighing.unsettled == ()


@pytest.mark.parametrize("students", [4, 7])  # two groups, and four
def test_every_group_is_never_told_to_weigh_the_whole_batch(tmp_path: Path, students: int) -> None:
    sheet = sheet_of(lesson_of(tmp_path, "scrub", BatchFor.CLASS, SCRUB.format(sugar="students", oil="together")), students)
    (one,) = sheet.weighing.unsettled
    assert (one.part.title, one.ingredients) == ("Weigh the sugar", ("White sugar",))
