"""Every list of the example studio is proven in every region, whatever students choose."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.compose.label.label_words import ingredient_text
from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import ListedAs, Recipe
from builder.model.recipe.size import TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.reckon import reckon_recipe
from builder.reckon.label.soap_as_made import soap_as_made
from tests.making import sure
from tests.studios import example_studio

STUDIO, _ = example_studio()
SIZE = TotalSize(Mass(Fraction(2000)))


def sheet(recipe: Recipe, region: str) -> WorkedBatch:
    studio = replace(STUDIO, profile=replace(STUDIO.profile, region=region))
    return reckon_recipe(studio, recipe, SIZE)


@pytest.mark.parametrize("region", ["US", "EU", "UK", "Canada"])
@pytest.mark.parametrize("key", STUDIO.recipes)
def test_every_list_is_proven(key: str, region: str) -> None:
    made = sheet(STUDIO.recipes[key], region)
    assert made.own.variants
    for variant in made.own.variants:
        listed = variant.ingredients
        assert (listed.open_pairs, listed.nameless) == ((), ())
        order = [entry for entry in listed.entries if entry.declared_as == "ingredient"]
        assert not any(
            after.least > before.most and after.most > Fraction(1, 100) for at, before in enumerate(order) for after in order[at:]
        )
        assert len({entry.inci for entry in listed.entries}) == len(listed.entries)
        assert ingredient_text(listed, STUDIO.regions[region])


def test_water_and_scent_go_by_the_words_of_the_region() -> None:
    made = {region: sheet(STUDIO.recipes["meadow-lotion"], region).own.variants[0].ingredients for region in STUDIO.regions}
    texts = {region: ingredient_text(listed, STUDIO.regions[region]) for region, listed in made.items()}
    assert texts["US"].startswith("Water (Aqua), Helianthus Annuus (Sunflower) Seed Oil")
    assert all(text.startswith("Aqua, Helianthus Annuus Seed Oil") for region, text in texts.items() if region != "US")
    assert "Fragrance" in texts["US"]
    assert texts["Canada"].endswith("CI 77019, Parfum")


def test_a_soap_is_listed_as_it_came_out_where_the_recipe_says_so() -> None:
    recipe = replace(STUDIO.recipes["pump-side-hand-soap"], listed=ListedAs.MADE)
    made = sheet(recipe, "EU")
    listed, soap = made.own.variants[0].ingredients, made.soap
    assert listed.open_pairs == ()
    assert [entry.inci for entry in listed.entries][:4] == ["Aqua", "Potassium Sunflowerseedate", "Potassium Cocoate", "Glycerin"]
    assert "Potassium Hydroxide" not in {entry.inci for entry in listed.entries}
    water = next(entry for entry in listed.entries if entry.inci == "Aqua")
    assert water.least <= sure(soap).water / sure(soap).total <= water.most


def came_out(made: WorkedBatch) -> dict[str, tuple[Fraction, Fraction]]:
    """Return the least and the most of each name that came out of the pot, as shares of what went in."""
    ends: dict[str, tuple[Fraction, Fraction]] = {}
    for one, least, most in soap_as_made(sure(made.soap), made.grams, made.product, STUDIO.ingredients, None):
        parts = sure(one.label_name).shares or {0: (Fraction(1), Fraction(1))}
        for number, (share, _) in parts.items():
            low, high = ends.get(sure(one.label_name).inci[number], (Fraction(0), Fraction(0)))
            ends[sure(one.label_name).inci[number]] = (low + least * share, high + most * share)
    return ends


def test_glycerin_is_freed_with_the_soap_and_so_has_its_range() -> None:
    made = sheet(STUDIO.recipes["green-lab-bar"], "EU")
    lye, freed = made.grams.lye, sure(made.soap).glycerol / sure(made.soap).total
    assert lye is not None
    all_of_it = freed / (1 - lye.superfat)
    assert came_out(made)["Glycerin"] == (all_of_it * (1 - lye.highest), all_of_it * (1 - lye.lowest))


def test_fat_that_is_not_meant_to_stay_free_may_do_so() -> None:
    made = sheet(STUDIO.recipes["green-lab-bar"], "EU")
    none_free = tuple(replace(one, unsaponified=Mass(Fraction(0))) for one in sure(made.soap).soaps)
    lye = replace(sure(made.grams.lye), superfat=Fraction(0), lowest=Fraction("-0.03"), highest=Fraction("0.03"))
    made = replace(made, soap=replace(sure(made.soap), soaps=none_free), columns=(replace(made.grams, lye=lye),))
    least, most = came_out(made)["Olea Europaea Fruit Oil"]
    olive = next(one for one in sure(made.soap).soaps if one.ingredient.name == "Olive oil")
    assert (least, most) == (Fraction(0), olive.soap / sure(made.soap).total * Fraction("0.03"))


def test_the_water_of_a_bar_that_was_never_weighed_is_open() -> None:
    bar = replace(STUDIO.recipes["kitchen-garden-bar"], cure=None)
    listed = sheet(replace(bar, listed=ListedAs.MADE), "EU").own.variants[0].ingredients
    assert ("water", "glycerin") in listed.open_pairs or ("glycerin", "water") in listed.open_pairs
