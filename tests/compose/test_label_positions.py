"""What is printed on each label of a sheet, front and back, is what its own jar has: words, ingredient list and design."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

import pytest

from builder.compose.documents.labels import compose_labels
from builder.compose.label.label_texts import LabelText
from builder.compose.label_again import labels_again
from builder.compose.label_layout.label_plans import plan_labels
from builder.compose.label_layout.sharing import on_shared_sheets
from builder.compose.scopes import LABELS, Labelled
from builder.compose.views.labels import PositionView
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.roster.roster import Roster
from builder.model.teaching.class_plan import ClassPlan
from builder.reckon.teaching.classes import reckon_class
from tests.compose.test_roster_to_paper import HERE, LABELLED, THREE, edition_of, positions_of
from tests.making import sure
from tests.reckon.test_guests import LOTION, PARTY, QUICK, STUDIO, at, people

# A cream in jars with a label on the lid and one on the base: fronts on sheets of their own, and behind them their backs.
CREAM = replace(LOTION, makes=LOTION.makes[1:])


def said(position: PositionView) -> str:
    return " ".join(run.text for block in position.blocks for line in block.lines for run in line).replace("\u00a0", " ")


def words(text: LabelText) -> tuple[str, str]:
    """Return what was chosen, and the ingredient list."""
    return text.variant.replace("\u00a0", " "), "".join(run.text for run in text.back[0]).replace("\u00a0", " ")


def printed(plan: ClassPlan) -> Iterator[tuple[Labelled, list[PositionView], list[PositionView]]]:
    """Yield each sheet of labels with its positions, fronts and then backs on sheets of their own."""
    for one in LABELS.all(edition_of(plan)):
        positions = positions_of(compose_labels(edition_of(plan), one, HERE).view)
        fronts = sum(len(each.positions) for each in one.labels)
        yield one, positions[:fronts], positions[fronts:]


def squeezed(text: str) -> str:
    return "".join(text.split())


SCENTS = people(["scent"], [("lavender oil",), ("no scent",), ("cedarwood essential oil",)])


# Labels of the party have a front to colour in, with a line for the name in place of what was chosen.
@pytest.mark.parametrize(("studio_class", "roster", "named"), [(PARTY, THREE, False), (QUICK, SCENTS, True)], ids=["party", "lotion"])
def test_fronts_and_backs_are_those_of_the_jar(studio_class: StudioClass, roster: Roster, named: bool) -> None:
    for one, fronts, _ in printed(at(studio_class, 3, roster)):
        positions = iter(fronts)
        for each in one.labels:
            label = squeezed(" ".join(said(next(positions)) for _ in each.positions))
            text = each.plan.texts[each.plan.jars.index(each.jar)]
            variant, ingredients = words(text)
            assert squeezed(ingredients) in label and each.jar.pot.code in label
            assert (squeezed(variant) in label) is named
        assert len({words(each.plan.texts[each.plan.jars.index(each.jar)]) for each in one.labels}) > 1


def cream() -> ClassPlan:
    """Work out the cream for three students, with the scents of the lotion, of which each takes another."""
    scent = STUDIO.recipes["meadow-lotion"].choices[0]
    recipe = STUDIO.recipes[CREAM.makes[0].recipe.text]
    when = ClassDate(datetime(2027, 6, 5, 10), 3)
    a_class = replace(CREAM, dates=(when,))
    recipes = {**STUDIO.recipes, recipe.key: replace(recipe, choices=(scent,))}
    return reckon_class(replace(STUDIO, recipes=recipes, rosters={a_class.key: SCENTS}), a_class, when)[0]


def test_backs_on_sheets_of_their_own_are_those_of_their_jars() -> None:
    ((one, fronts, backs),) = printed(cream())
    assert len(fronts) == len(backs) == len(one.labels)
    lists = [words(each.plan.texts[each.plan.jars.index(each.jar)])[1] for each in one.labels]
    assert len(set(lists)) > 1
    assert all(squeezed(ingredients) in squeezed(said(back)) for ingredients, back in zip(lists, backs, strict=True))


def test_the_design_of_one_guest_is_on_their_label_alone() -> None:
    plain = people(["still-water-bath-salts scent", "colour"], [("no scent", "no colour")] * 3)
    roster = replace(plain, rows=(replace(plain.rows[0], design="slate"), *plain.rows[1:]))
    ((_, usual, _), *_), ((one, positions, _), *_) = printed(at(PARTY, 3, plain)), printed(at(PARTY, 3, roster))
    of_salts = [index for index, each in enumerate(one.labels) if each.plan.made.batch.recipe.key == "still-water-bath-salts"]
    each_has = len(one.labels[0].positions)
    fronts, before = ([some[index * each_has].drawing_html for index in of_salts[:3]] for some in (positions, usual))
    assert fronts[0] != before[0] and fronts[1:] == before[1:]


def test_labels_with_other_backs_lie_on_other_sheets() -> None:
    (of_cream,) = plan_labels(LABELLED, cream())
    assert sure(of_cream.laid_out).back is not None
    alone = replace(of_cream, laid_out=replace(sure(of_cream.laid_out), back=None))
    assert (len(on_shared_sheets([of_cream, of_cream])), len(on_shared_sheets([of_cream, alone]))) == (1, 2)


def test_on_plain_paper_that_is_cut_labels_begin_anew() -> None:
    plan = at(PARTY, 4)
    found = list(labels_again(edition_of(plan), 2, None))
    assert [(again.sheet.is_cut, again.begins) for again in found] == [(True, 1)] * len(plan.made)
