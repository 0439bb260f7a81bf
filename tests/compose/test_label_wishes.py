"""Whose wish a label follows: its guest's before that of the recipe, the class and the studio; a name of their own only where it may be."""

from pathlib import Path

import pytest

from builder.compose.edition import Edition
from builder.compose.label_layout.label_plans import LabelPlan, plan_labels
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import composed
from tests.making import sure

ROSTER = """name,date,scent,design,their name for it
Ada Loom,2027-03-06,lavender essential oil,slate,Sleepy salts
Bo Fenn,2027-03-06,no scent,,
"""
# How many jars of salts each student of the studio fills.
EACH = 2


def studio(folder: Path, *, own_names: bool, recipe: str = "") -> Edition:
    labels = f"labels: {{design: linen, names of their own: {'yes' if own_names else 'no'}}}\n"
    write_studio(
        folder,
        studio_yaml=FILES["studio.yaml"].rstrip("\n") + "\n" + labels,
        recipes__salts_yaml=FILES["recipes/salts.yaml"].rstrip("\n") + recipe,
    )
    (folder / "classes/first/roster.csv").write_text(ROSTER, encoding="utf-8")
    return read_edition(folder)


def salts(edition: Edition) -> LabelPlan:
    return next(plan for plan in plan_labels(edition.studio, edition.plans[-1]) if plan.made.batch.recipe.key == "salts")


@pytest.mark.parametrize(("recipe", "others"), [("", "linen"), ("\nlabel design: poster\n", "poster")])
def test_a_guests_design_comes_before_the_recipes_and_that_before_the_studios(tmp_path: Path, recipe: str, others: str) -> None:
    laid = salts(studio(tmp_path, own_names=True, recipe=recipe)).laid_out
    names = [sure(label[0].drawing).design.name for label in sure(laid).labels]
    assert names[:EACH] == ["slate"] * EACH and set(names[EACH:]) == {others}


def test_a_name_of_their_own_stands_on_their_label_alone(tmp_path: Path) -> None:
    edition = studio(tmp_path, own_names=True)
    names = [text.name for text in salts(edition).texts]
    assert names[:EACH] == ["Sleepy salts"] * EACH and set(names[EACH:]) == {"Plain salts"}
    assert all(text.identity == "Bath salts" for text in salts(edition).texts)
    for kind in ("labels", "teacher's sheet", "class page", "tags", "bench cards", "dose cards"):
        made = composed(kind, edition, edition.plans[-1])
        assert any("Sleepy" in one.html for one in made) is (kind == "labels"), kind


def test_it_stands_nowhere_where_the_studio_does_not_allow_it(tmp_path: Path) -> None:
    edition = studio(tmp_path, own_names=False)
    assert {text.name for text in salts(edition).texts} == {"Plain salts"}
    assert not any("Sleepy" in one.html for one in composed("labels", edition, edition.plans[-1]))
