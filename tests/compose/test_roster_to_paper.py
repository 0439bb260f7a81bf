"""From the roster to what is printed of a date: each list, label, card and bench says what is of that person, product and group."""

import re
from dataclasses import replace
from datetime import date, datetime

from builder.compose.addresses import Address
from builder.compose.documents.bench_cards import compose_bench_cards
from builder.compose.documents.labels import compose_labels
from builder.compose.documents.tags import compose_tags
from builder.compose.dose.choice_totals import view_guests, view_totals
from builder.compose.edition import Edition
from builder.compose.label.label_counts import label_counts, label_totals
from builder.compose.label_layout.label_layout import LaidPosition
from builder.compose.label_layout.label_plans import plan_labels
from builder.compose.label_layout.sharing import OneLabel
from builder.compose.scopes import LABELS
from builder.compose.teaching.format_words import your_part
from builder.compose.teaching.seating import view_seating
from builder.compose.teaching.supervision_words import adult
from builder.compose.templates import Templates
from builder.compose.views.bench_cards import BenchCardsView
from builder.compose.views.labels import LabelsView, PositionView
from builder.fonts.typefaces import typefaces_of_labels
from builder.library import LAYOUTS
from builder.model.dates.studio_class import ClassDate
from builder.model.document import Folder
from builder.model.place import Name
from builder.model.recipe.recipe import Fill
from builder.model.recipe.size import ToFill
from builder.model.roster.roster import Guest
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.preparation import Worn
from builder.reckon.teaching.classes import reckon_class
from builder.reckon.teaching.preparation import reckon_preparation
from tests.making import grams, share, sure
from tests.reckon.test_guests import PARTY, QUICK, STUDIO, at, no_spare, people

LABELLED = replace(STUDIO, typefaces=typefaces_of_labels())
HERE = Address(Folder.PRINT, "x/y.pdf")
LAB = STUDIO.classes["soap-lab-in-pairs"]
# A bath salt with lavender and a plain scrub; the other way round; and one who has not yet said what goes into the scrub.
THREE = people(
    ["still-water-bath-salts scent", "colour", "orchard-sugar-scrub scent"],
    [("lavender essential oil", "no colour", "no scent"), ("no scent", "", "lavender essential oil"), ("lavender oil", "no colour", "")],
)


def edition_of(*plans: ClassPlan) -> Edition:
    return Edition(LABELLED, plans, (), Templates((LAYOUTS,)), date(2027, 1, 2))


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_the_list_of_guests_says_of_each_product_what_was_chosen_for_it_and_from_which_pot_it_is_filled() -> None:
    plan = at(PARTY, 3, THREE)
    (table,) = view_guests(plan)
    salts, scrub = (table.columns.index(f"{made.batch.recipe.name}: scent") for made in plan.made)
    assert [(row[salts], row[scrub]) for row in table.rows] == [
        ("lavender essential oil", "no scent"), ("no scent", "lavender essential oil"), ("lavender essential oil", "not yet"),
    ]  # fmt: skip
    pot = table.columns.index("Pot")
    assert [row[pot] for row in table.rows] == ["1", "2", "3"]


def test_groups_are_counted_on_the_list_of_guests() -> None:
    plan = at(replace(LAB, makes=(replace(LAB.makes[0], at_home=()),)), 5, people([], [()] * 5))
    (table,) = view_guests(plan)
    assert [row[table.columns.index("Group")] for row in table.rows] == ["1", "1", "2", "2", "3"]


def test_the_size_of_a_take_home_sheet_stands_beside_who_wants_it() -> None:
    plan = at(PARTY, 3, THREE)
    (table,) = view_guests(plan)
    assert "Take-home sheet" not in table.columns
    first, *others = plan.guests
    (table,) = view_guests(replace(plan, guests=(replace(first, at_home="4 containers"), *others)))
    assert [row[table.columns.index("Take-home sheet")] for row in table.rows] == ["4 containers", "", ""]


def test_who_waits_is_listed_apart_and_has_no_pot() -> None:
    plan = replace(at(PARTY, 3, THREE), waiting=(Guest("Wanda", None, "", {}),))
    come, wait = view_guests(plan)
    assert "Pot" in come.columns and "Pot" not in wait.columns
    assert [row[0] for row in wait.rows] == ["Wanda"] and "Wanda" not in {row[0] for row in come.rows}
    assert wait.rows[0][wait.columns.index(f"{plan.made[0].batch.recipe.name}: scent")] == "not yet"


# Of 113 g: 0.5 % are 0.565 g, 0.56 g on a scale that reads to 0.01 g; 0.2 % are 0.226 g, 0.22 g.
def test_two_choices_of_the_same_oil_are_each_counted_by_their_own_most() -> None:
    recipe = STUDIO.recipes["meadow-lotion"]
    scent, lavender = recipe.choices[0], Name("Lavender essential oil")
    assert scent.at_most == share("0.5")
    choices = (
        replace(scent, options=(lavender, None)),
        replace(scent, what="second scent", options=(lavender, None), at_most=share("0.2")),
    )
    changed = replace(STUDIO, recipes={**STUDIO.recipes, recipe.key: replace(recipe, choices=choices)})
    when = ClassDate(datetime(2027, 6, 5), 4)
    a_class = replace(no_spare(QUICK), dates=(when,))
    roster = people(["scent", "second scent"], [("lavender oil", "no second scent"), ("lavender oil", ""), ("", "lavender oil")])
    plan = reckon_class(replace(changed, rosters={a_class.key: roster}), a_class, when)[0]
    first, second = view_totals(changed, plan.made[0], has_roster=True)
    ((one,), (other,)) = first.rows, second.rows
    assert [plain(row.most).partition(",")[0] for row in (one, other)] == ["0.56 g", "0.22 g"]
    # Scent: two chose it and two are open, of which one is expected to take it. Second scent: one chose it, one left it out, two are open.
    assert [plain(cell) for cell in (one.chosen, one.for_chosen, one.expected, one.worst)] == ["2", "1.12 g", "1.68 g", "2.24 g"]
    assert [plain(cell) for cell in (other.chosen, other.for_chosen, other.expected, other.worst)] == ["1", "0.22 g", "0.44 g", "0.88 g"]
    assert [note.startswith("1") for note in map(plain, second.notes) if "with no second scent" in note] == [True]


def test_each_label_is_of_its_own_product_and_of_the_day_of_its_date() -> None:
    dates = ClassDate(datetime(2027, 6, 5, 10), 3), ClassDate(datetime(2027, 7, 3, 10), 3)
    for plan, day in zip(reckon_class(LABELLED, replace(PARTY, dates=dates), *dates), ("June 5, 2027", "July 3, 2027"), strict=True):
        plans = list(plan_labels(LABELLED, plan))
        assert [{text.name for text in one.texts} for one in plans] == [{made.batch.recipe.name} for made in plan.made]
        assert all(day in plain(text.lines[0][0].text) for one in plans for text in one.texts)
        for one in plans:
            scents = [dict(jar.variant.chosen)["scent"] for jar in one.jars]
            assert ["Lavender" in text.variant for text in one.texts] == [scent == "Lavender essential oil" for scent in scents]
            assert len(set(scents)) > 1


def positions_of(view: object) -> list[PositionView]:
    assert isinstance(view, LabelsView)
    return [cell for page in view.pages for cell in page]


def test_labels_begin_where_the_sheet_is_used_up_and_those_of_the_next_product_on_a_new_one() -> None:
    dates = ClassDate(datetime(2027, 6, 5, 10), 3), ClassDate(datetime(2027, 7, 3, 10), 3, first_label=2)
    edition = edition_of(*reckon_class(LABELLED, replace(PARTY, dates=dates), *dates))
    fresh, other, begun, after = (positions_of(compose_labels(edition, one, HERE).view) for one in LABELS.all(edition))
    assert begun[0].style == fresh[1].style != fresh[0].style
    assert after[0].style == other[0].style


def with_labels(plan: ClassPlan, *, tags: bool = False, to_colour: bool = False) -> Edition:
    labels = replace(LABELLED.profile.labels, tags=tags, to_colour=to_colour)
    return replace(edition_of(plan), studio=replace(LABELLED, profile=replace(LABELLED.profile, labels=labels)))


def test_a_tag_bears_the_mark_of_what_its_student_takes_home() -> None:
    plan = at(PARTY, 3, THREE)
    view = sure(compose_tags(with_labels(plan, tags=True), plan, HERE)).view
    lavender, without, lavender_too = [cell.drawing_html for cell in positions_of(view) if cell.drawing_html]
    assert lavender == lavender_too != without


def undrawn(positions: tuple[LaidPosition, ...]) -> tuple[LaidPosition, ...]:
    return tuple(replace(one, drawing=None) for one in positions)


def without_fronts(label: OneLabel) -> OneLabel:
    laid = replace(label.laid_out, labels=tuple(map(undrawn, label.laid_out.labels)))
    return replace(label, laid_out=laid, positions=undrawn(label.positions))


def test_a_panel_to_colour_in_bears_the_mark_of_what_is_in_its_jar() -> None:
    edition = with_labels(at(PARTY, 3, THREE), to_colour=True)
    for one in LABELS.all(edition):
        bare = replace(one, labels=tuple(map(without_fronts, one.labels)))
        drawn = [cell.drawing_html for cell in positions_of(compose_labels(edition, bare, HERE).view) if cell.drawing_html]
        jars = [(each.plan.name, each.jar.variant.chosen) for each in one.labels]
        assert len(set(jars)) > 1
        assert len({drawing for drawing, jar in zip(drawn, jars, strict=True) if jar == jars[0]}) == 1
        # It stands for each ingredient and each option that was taken, with a petal or two for each.
        said = [[int(number) for number in sure(re.search(r"(\d+) petals for (\d+) ingredients", drawing)).groups()] for drawing in drawn]
        taken = [sum(option is not None for _, option in each.jar.variant.chosen) for each in one.labels]
        told = [len(each.plan.made.batch.recipe.lines) + more for each, more in zip(one.labels, taken, strict=True)]
        assert [ingredients for _, ingredients in said] == told
        assert all(ingredients <= petals <= 2 * ingredients for petals, ingredients in said)
        assert len(set(taken)) > 1


def test_labels_are_counted_for_each_kind_of_container_by_itself() -> None:
    small = ToFill(Fill(Name("2 fl oz bottle"), grams(50)), 2, 1)
    a_class = replace(no_spare(QUICK), makes=(replace(QUICK.makes[0], spare=0, also=(small,)),))
    plan = at(a_class, 3, people(["scent", "colour"], [("lavender oil", "no colour")] * 3))
    own, other, *_ = label_counts(STUDIO, plan.made[0])
    assert own.endswith(": 3 lavender essential oil, no colour")
    assert "6 lavender essential oil, no colour" in other and "1 of these stands for" in other
    packed = replace(plan.made[0].containers[1], jars=plan.made[0].containers[1].jars[:4])
    made = replace(plan.made[0], containers=(plan.made[0].containers[0], packed))
    plan = replace(plan, made=(made,))
    numbers = [re.findall(r"\d+$", one.line) for one in label_totals(edition_of(plan), plan)]
    # As many as there are labels, which for packages are fewer than containers.
    assert numbers[-2:] == [["3"], ["4"]]


def test_each_bench_has_its_own_adult_and_its_own_place_on_the_plan_of_the_room() -> None:
    plan = at(replace(LAB, group_size=2, teachers=2, assistants=2), 13)
    assert plan.groups == 7 and len(plan.supervision.watchers) == 4
    drawn = sure(view_seating(plan))
    watched = {number: adult(one) for one in plan.supervision.watchers for number in one.groups}
    assert len(set(watched.values())) == 4
    benches = [box for box in drawn.boxes if not box.strong]
    assert len({(box.x, box.y) for box in benches}) == 7
    for number, box in enumerate(benches, start=1):
        words = [plain(text.words) for text in drawn.texts if text.x == box.x + box.width // 2 and box.y <= text.y <= box.y + box.height]
        assert words == [f"Group {number}: {'1 person' if number == 7 else '2 people'}", watched[number]]


def test_the_card_of_a_smaller_group_says_who_they_are_and_alone_what_is_left_over() -> None:
    lab = replace(LAB, makes=(replace(LAB.makes[0], each_student=2, spare=0, at_home=()),))
    plan = at(replace(lab, group_size=3), 8)
    view = sure(compose_bench_cards(edition_of(plan), plan, HERE)).view
    assert isinstance(view, BenchCardsView)
    assert [len(page.cards) for page in view.pages] == [2, 1]
    cards = (view.pages[0].cards[0], view.pages[1].cards[0])
    said = [(plain(card.heading), plain(card.people), plain(card.products[0].left_over).partition(" of ")[0]) for card in cards]
    assert said == [("Groups 1 and 2 of 3", "3 people each", ""), ("Group 3 of 3", "2 people", "2 bars")]


def test_a_choice_that_the_teacher_makes_is_not_promised_to_students() -> None:
    plan = at(QUICK, 6)
    lotion = plan.made[0]
    assert any(line.startswith("You choose scent and colour yourself.") for line in your_part(plan))
    shown = replace(plan, made=(replace(lotion, taught=replace(lotion.taught, chosen=False)),))
    assert not any("choose" in line for line in your_part(shown))


def test_tools_of_what_the_teacher_makes_stand_on_the_demo_table() -> None:
    plan = at(PARTY, 3)
    salts, scrub = plan.made
    a_class = replace(PARTY, on_each_bench=(), on_the_demo_table=())
    shown = replace(scrub, taught=replace(scrub.taught, by_students=False, together=False, shown=True))
    ready = reckon_preparation(a_class, (salts, shown), 3, plan.supervision, {})
    assert set(ready.at_benches) <= set(salts.batch.recipe.tools)
    assert set(ready.at_demo) <= set(scrub.batch.recipe.tools)
    assert ready.at_benches and ready.at_demo


def listing(made: MadeProduct, *tools: str) -> MadeProduct:
    """Return a product whose recipe lists these tools."""
    first = made.batches[0]
    batch = replace(first.batch, recipe=replace(first.batch.recipe, tools=tools))
    return replace(made, batches=(replace(first, batch=batch), *made.batches[1:]))


def test_what_a_recipe_lists_to_put_on_is_counted_for_all_who_make_it_where_no_rule_asks_for_it() -> None:
    plan = at(PARTY, 3)
    salts = listing(plan.made[0], "cotton apron", "bowl")
    asks_for_none = replace(plan.supervision, parts=())
    hazard = next(hazard for part in plan.supervision.parts for hazard in part.hazards)
    asked = reckon_preparation(PARTY, (salts,), 3, plan.supervision, {hazard: ["apron"]}).worn
    assert reckon_preparation(PARTY, (salts,), 3, asks_for_none, {}).worn == (Worn("cotton apron", 3 + asks_for_none.staff),)
    assert [one.item for one in asked if "apron" in one.item] == ["apron"]
    shown = replace(salts, taught=replace(salts.taught, by_students=False, together=False, shown=True))
    assert reckon_preparation(PARTY, (shown,), 3, asks_for_none, {}).worn == (Worn("cotton apron", asks_for_none.staff),)


def test_a_scale_that_people_have_at_home_alone_is_not_set_out_in_class() -> None:
    plan = at(PARTY, 3)
    salts = listing(plan.made[0], "kitchen scale", "pocket scale", "bowl")
    a_class = replace(PARTY, on_each_bench=(), on_the_demo_table=())
    assert reckon_preparation(a_class, (salts,), 3, plan.supervision, {}, {"kitchen scale"}).at_benches == ("pocket scale", "bowl")
