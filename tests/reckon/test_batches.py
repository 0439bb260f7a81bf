"""Scaling, weighing out, portions and ingredient lists: published splits, and properties over many made-up batches."""

from collections.abc import Sequence
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.place import Name
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, DeclaredAs, DropMass, Ingredient, LabelName, MixesWith
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.quantity import NO_MASS, Amount, Density, Drops, Mass, Rest, Share, Volume, sum_masses
from builder.model.recipe.recipe import AmountsAs, Choice, Fill, MeasuredDensity, Recipe
from builder.model.recipe.size import ContainersSize, MouldSize, OilsSize, PeopleSize, ToFill, TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.reckon.label.ingredient_list import list_ingredients
from builder.reckon.recipe.rounding import round_down, round_near
from builder.reckon.recipe.scales import Vessel, pick_scale
from tests.making import card, cards, grams, parts, phase, recipe, scale, share, worked

LOTION = Product("lotion", "Lotion", Contact.LEAVE_ON, False, DeclaredBy.WEIGHT)
FINE = [scale("0.001")]
OUNCE = "28.349523125"


def lotion(**lines: Share) -> Recipe:
    amounts: dict[str, Amount] = {"water": Rest(), "glycerin": share(3), "oil": share(20), **lines}
    return recipe(phase("all", amounts), fill="113")


def people(containers: int, demo: Mass = NO_MASS, left: Mass = NO_MASS) -> PeopleSize:
    return PeopleSize((ToFill(lotion().fill, containers),), 1, False, demo, left)


STOCK = cards(card("glycerin"), card("oil", CountsAs.FAT), card("mica"))


def exact(sheet: WorkedBatch) -> dict[str, Fraction]:
    return {line.name: line.exact.grams for line in sheet.lines}


# British Pharmaceutical Codex 1911, Paraffin Cerate: beeswax 6.25 %, soft paraffin 93.75 %; 1/2 oz and 7 1/2 oz.
def test_percent_to_parts_of_the_1911_codex() -> None:
    made = recipe(phase("all", {"beeswax": share("6.25"), "soft paraffin": share("93.75")}))
    size = TotalSize(grams(OUNCE) * 8)
    sheet = worked(made, LOTION, size, cards(card("beeswax"), card("soft paraffin")), FINE)
    assert exact(sheet) == {"beeswax": Fraction(OUNCE) / 2, "soft paraffin": Fraction(OUNCE) * 15 / 2}


# British Pharmaceutical Codex 1911, Aseptic Wax: 87.50, 12.50 and 1.00 come to 101: the acid is 1 on 100. As parts, 35 grains on 8 oz.
def test_one_on_a_hundred_is_a_matter_of_parts() -> None:
    made = recipe(phase("all", {"wax": parts("87.5"), "almond oil": parts("12.5"), "salicylic acid": parts(1)}), amounts_as=AmountsAs.PARTS)
    sheet = worked(made, LOTION, TotalSize(grams(101)), cards(card("wax"), card("almond oil"), card("salicylic acid")), FINE)
    assert exact(sheet)["salicylic acid"] == 1
    grain = Fraction("0.06479891")
    assert float(35 * grain / (8 * Fraction(OUNCE))) == pytest.approx(0.01, abs=1e-9)


# Food-analysis course: a pycnometer gives honey 1.3935 at 27 °C (28.4773 g empty, 54.8809 g with water, 65.2718 g with honey).
def test_a_volume_becomes_a_mass_through_a_measured_density() -> None:
    density = (Fraction("65.2718") - Fraction("28.4773")) / (Fraction("54.8809") - Fraction("28.4773"))
    assert float(density) == pytest.approx(1.3935, abs=5e-5)
    made = recipe(phase("all", {"honey": Volume(Fraction(100))}), amounts_as=AmountsAs.WEIGHTS)
    sheet = worked(made, LOTION, TotalSize(grams("139.35")), cards(card("honey", density="1.3935")), FINE)
    working = next(w for w in sheet.workings if w.rule == "volume through density")
    assert working.result == Fraction("139.35")


# Laboratory protocol: 50 % by weight at 1.515 g/mL holds 757.5 g/L; general chemistry exercise 394: 30.0 % at 1.325 g/mL holds 397.5 g/L.
@pytest.mark.parametrize(("strength", "density", "per_litre"), [("0.50", "1.515", "757.5"), ("0.300", "1.325", "397.5")])
def test_a_solution_by_weight_and_volume(strength: str, density: str, per_litre: str) -> None:
    litre = Density(Fraction(density)).mass_of(Volume(Fraction(1000)))
    assert litre.grams * Fraction(strength) == Fraction(per_litre)


# Eschbaum 1895: a tip of 3.07 mm gives drops of water of 52.2 mg, 19.2 to the gram; the USP's dropper gives 45 to 55 mg.
def test_drops_weigh_what_was_measured() -> None:
    drop = DropMass(50, grams("2.61"), "50 drops of water, tip of 3.07 mm")
    assert float(1 / drop.one.grams) == pytest.approx(19.2, abs=0.05)
    assert 45 <= drop.one.grams * 1000 <= 55
    oil = Ingredient(
        "oil", IngredientKind.OIL, CountsAs.OTHER, MixesWith.OIL, label_name=LabelName(("Oil",), ("oil",), Known.MEMORY), drop_mass=drop
    )
    made = recipe(phase("all", {"oil": Drops(Fraction(12))}), amounts_as=AmountsAs.WEIGHTS)
    sheet = worked(made, LOTION, TotalSize(grams(1)), cards(oil), FINE)
    assert next(w.result for w in sheet.workings if w.rule == "drops through drop mass") == 12 * Fraction("0.0522")


def test_a_mould_is_filled_through_the_measured_density() -> None:
    made = recipe(phase("all", {"water": Rest()}), density=MeasuredDensity(Density(Fraction("0.98")), "one jar weighed"))
    sheet = worked(made, LOTION, MouldSize(Volume(Fraction(1680))), STOCK, FINE)
    assert sum_masses(line.exact for line in sheet.lines) == grams("1646.4")


def test_oils_of_a_given_weight() -> None:
    sheet = worked(lotion(), LOTION, OilsSize(grams(200)), STOCK, FINE)
    assert exact(sheet)["oil"] == 200


def test_a_batch_for_people_holds_what_is_shown_and_what_sticks() -> None:
    sheet = worked(lotion(), LOTION, people(14, grams(50), grams(20)), STOCK, FINE)
    assert sum_masses(line.exact for line in sheet.lines) == grams(14 * 113 + 70)
    assert sheet.own.portions.yields == 14
    assert sheet.own.portions.left == NO_MASS


def test_rounding_leaves_no_container_short() -> None:
    coarse = [scale("5")]
    sheet = worked(lotion(glycerin=share("3.3")), LOTION, ContainersSize(7), STOCK, coarse)
    assert sheet.grams.total >= grams(7 * 113)
    assert sheet.own.portions.yields == 7


def test_each_amount_is_weighed_on_the_finest_scale_that_holds_it() -> None:
    pocket, bench = scale("0.01", "200"), scale("1", "5000")
    nothing = Vessel(grams(0), Fraction(0))
    assert pick_scale(grams(200), [bench, pocket], nothing) == (pocket, True)
    assert pick_scale(grams("200.01"), [bench, pocket], nothing) == (bench, True)
    assert pick_scale(grams(6000), [pocket, bench], nothing) == (bench, False)
    assert pick_scale(grams(160), [bench, pocket], Vessel(grams(50), Fraction(0))) == (bench, True)
    assert pick_scale(grams(160), [bench, pocket], Vessel(grams(0), Fraction("0.25"))) == (pocket, True)
    assert pick_scale(grams(161), [bench, pocket], Vessel(grams(0), Fraction("0.25"))) == (bench, True)


def test_rounding_has_a_direction() -> None:
    assert round_down(grams("9.999"), grams("0.1")) == grams("9.9")
    assert round_near(grams("9.95"), grams("0.1")) == grams(10)
    assert round_down(grams(300) / 3, grams("0.1")) == grams(100)


amounts = st.fractions(1, 30, max_denominator=20)
sizes = st.fractions(50, 5000, max_denominator=10)


@given(amounts, amounts, sizes, st.integers(2, 12))
def test_scaling_up_and_down_gives_the_batch_back(one: Fraction, other: Fraction, size: Fraction, times: int) -> None:
    made = recipe(phase("all", {"water": Rest(), "glycerin": share(one), "oil": share(other)}))
    small = worked(made, LOTION, TotalSize(grams(size)), STOCK, FINE)
    big = worked(made, LOTION, TotalSize(grams(size) * times), STOCK, FINE)
    assert [line.exact * times for line in small.lines] == [line.exact for line in big.lines]
    assert sum_masses(line.exact for line in small.lines) == grams(size)


@given(st.integers(1, 30), st.integers(1, 4))
def test_twice_the_containers_take_twice_the_ingredients(students: int, each: int) -> None:
    one = worked(lotion(), LOTION, people(students * each), STOCK, FINE)
    two = worked(lotion(), LOTION, people(2 * students * each), STOCK, FINE)
    for single, double in zip(one.lines, two.lines, strict=True):
        assert abs(double.exact.grams - 2 * single.exact.grams) <= Fraction("0.01")


@given(st.lists(st.fractions(1, 100, max_denominator=50), min_size=1, max_size=12))
def test_an_ingredient_list_never_rises_in_weight(numbers: Sequence[Fraction]) -> None:
    whole = sum(numbers)
    weighed = [(card(f"thing {index}"), number / whole, number / whole) for index, number in enumerate(numbers)]
    listed = list_ingredients(weighed)
    shares = [entry.most for entry in listed.entries]
    assert shares == sorted(shares, reverse=True)
    assert listed.open_pairs == ()


def blend(name: str, *names: str) -> Ingredient:
    return Ingredient(name, IngredientKind.LOTION_BASE, CountsAs.BASE, MixesWith.BOTH, label_name=LabelName(names, names, Known.SUPPLIER))


def test_a_base_keeps_its_declared_order_and_small_additions_follow() -> None:
    base = blend("base", "Aqua", "Glycerin", "Cetearyl Alcohol")
    listed = list_ingredients([(base, Fraction("0.995"), Fraction("0.995")), (card("scent"), Fraction(0), Fraction("0.005"))])
    assert [entry.inci for entry in listed.entries] == ["Aqua", "Glycerin", "Cetearyl Alcohol", "Scent"]
    assert listed.open_pairs == ()


def test_an_addition_that_may_stand_anywhere_in_a_base_is_reported() -> None:
    base = blend("base", "Aqua", "Glycerin", "Cetearyl Alcohol")
    listed = list_ingredients([(base, Fraction("0.9"), Fraction("0.9")), (card("honey"), Fraction("0.1"), Fraction("0.1"))])
    assert {frozenset(pair) for pair in listed.open_pairs} == {frozenset({"Glycerin", "honey"}), frozenset({"Cetearyl Alcohol", "honey"})}


def test_the_first_of_a_base_stays_first_when_more_of_it_is_added() -> None:
    base = blend("base", "Aqua", "Glycerin")
    aqua = LabelName(("Aqua",), ("water",), Known.MEMORY)
    water = Ingredient("water", IngredientKind.WATER, CountsAs.WATER, MixesWith.WATER, label_name=aqua)
    listed = list_ingredients([(base, Fraction("0.9"), Fraction("0.9")), (water, Fraction("0.1"), Fraction("0.1"))])
    assert [entry.inci for entry in listed.entries] == ["Aqua", "Glycerin"]
    assert listed.open_pairs == ()
    assert listed.entries[0].least == Fraction("0.55")


def test_colours_stand_last_and_scents_are_one_fragrance() -> None:
    def declared(name: str, how: DeclaredAs) -> Ingredient:
        return Ingredient(
            name, IngredientKind.OTHER, CountsAs.OTHER, MixesWith.OIL, label_name=LabelName((name,), (name,), Known.MEMORY), declared_as=how
        )

    listed = list_ingredients(
        [
            (card("salt"), Fraction("0.90"), Fraction("0.90")),
            (declared("Mica", DeclaredAs.COLOUR), Fraction("0.06"), Fraction("0.06")),
            (declared("Lavandula Oil", DeclaredAs.FRAGRANCE), Fraction("0.02"), Fraction("0.02")),
            (declared("Mentha Oil", DeclaredAs.FRAGRANCE), Fraction("0.02"), Fraction("0.02")),
        ]
    )
    assert [entry.plain for entry in listed.entries] == ["salt", "Fragrance", "Mica"]
    assert listed.entries[1].most == Fraction("0.04")


def test_each_combination_of_choices_is_a_variant() -> None:
    made = recipe(
        phase("all", {"water": Rest()}),
        choices=(
            Choice("scent", (Name("oil"), None), share("0.5")),
            Choice("colour", (Name("mica"), Name("glycerin"), None), share("0.2")),
        ),
    )
    sheet = worked(made, LOTION, ContainersSize(3), STOCK, FINE)
    assert len(sheet.own.variants) == 6
    assert sheet.own.doses[0].at_most == grams("0.5")
    assert {variant.chosen for variant in sheet.own.variants} >= {(("scent", None), ("colour", "mica"))}


def test_a_dose_is_rounded_down_to_the_scale_and_to_whole_drops() -> None:
    oil = Ingredient(
        "oil",
        IngredientKind.OIL,
        CountsAs.OTHER,
        MixesWith.OIL,
        label_name=LabelName(("Oil",), ("oil",), Known.MEMORY),
        drop_mass=DropMass(50, grams("1.6"), "x"),
    )
    made = recipe(phase("all", {"water": Rest()}), choices=(Choice("scent", (Name("oil"),), share("0.5")),))
    made = type(made)(**{**made.__dict__, "fill": Fill(Name("bottle"), grams(113))})
    sheet = worked(made, LOTION, ContainersSize(1), cards(oil), [scale("0.1")])
    assert sheet.own.doses[0].at_most == grams("0.5")  # 0.565 g
    assert sheet.own.doses[0].each[0].drops == 17  # of 32 mg: 0.544 g, and 18 are 0.576 g
