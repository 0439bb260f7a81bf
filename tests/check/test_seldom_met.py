"""What rules let pass and seldom meet, and words that they seldom need: each beside the case of `findings/` that it is a twin of."""

from dataclasses import replace
from datetime import date, datetime
from fractions import Fraction
from pathlib import Path

import pytest

from builder import pipeline
from builder.check import check_batch
from builder.check.batches import Batch, batch_of
from builder.check.dates.dates_published import find_dates_that_differ
from builder.check.dose.colour_fields import find_colours_out_of_their_field
from builder.check.formula.acids_on_skin import find_acids_on_the_skin
from builder.check.formula.plants import find_plants_out_of_place
from builder.check.keeping.after_opening_missing import find_times_after_opening_missing
from builder.check.keeping.preservative_fit import find_preservatives_that_do_not_fit
from builder.check.label.allergens_not_stated import find_allergens_not_stated
from builder.check.label.label_order import find_open_label_orders
from builder.check.lye.lye_too_much import find_too_much_lye
from builder.check.lye.saponification_far_off import find_saponification_far_off
from builder.check.recipe.fill_and_container import find_fills_that_do_not_fit
from builder.model.dates.published_date import PublishedDate
from builder.model.label.ingredient_list import Question
from builder.model.place import Name
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.recipe import Choice, Cure, Fill, ListedAs, MeasuredPh, Recipe
from builder.model.recipe.size import ToFill, TotalSize
from builder.model.studio import Scale
from builder.model.subject import WholeRecipe
from builder.reckon import reckon_recipe
from tests.check.test_at_the_edge import batch, card_of, levels, mixed
from tests.check.test_seen_from_elsewhere import studio_of
from tests.making import card, figures, grams, lye, phase, recipe, share, soap, told
from tests.reckon.test_guests import STUDIO
from tests.reckon.test_ingredient_list import scent
from tests.reckon.test_lye_bought import batch as batch_with_lye
from tests.reckon.test_lye_bought import bought
from tests.test_findings import check


def seen_in(region: str, formula: Recipe, *cards: Ingredient, scales: tuple[Scale, ...] = STUDIO.profile.scales) -> Batch:
    """Return a batch of a kilogram in the example studio, were it in that region and had these scales."""
    known = {**STUDIO.ingredients, **{one.key: one for one in cards}}
    studio = replace(STUDIO, profile=replace(STUDIO.profile, region=region, scales=scales), ingredients=known)
    return batch_of("a batch", reckon_recipe(studio, formula, TotalSize(grams(1000))), studio, WholeRecipe("test"))


def test_one_batch_alone_is_judged_by_the_rules_on_batches() -> None:
    assert "alkali-on-skin stop" in levels(check_batch(batch(mixed(sodium_carbonate="1.01"))))


def test_a_date_that_was_cancelled_may_go_from_the_class_file() -> None:
    when = datetime(2027, 3, 6, 10)
    for cancelled, found in ((True, []), (False, ["date-gone caution"])):
        shown = PublishedDate("no-class", when, when, cancelled=cancelled, revision=0)
        assert levels(find_dates_that_differ(replace(STUDIO, published=(shown,)))) == found


# Silver came into Annex IV of the EU (entry 142) with Regulation (EU) 2026/78, after the United Kingdom had kept the law as it stood.
@pytest.mark.parametrize(("region", "found"), [("EU", ["colour-not-left-on stop"]), ("UK", [])])
def test_a_colour_that_came_after_the_law_was_kept_is_judged_where_it_is_law(region: str, found: list[str]) -> None:
    silver = replace(card("silver powder"), declared_as=DeclaredAs.COLOUR, colour_name={"eu": "CI 77820"})
    assert levels(find_colours_out_of_their_field(seen_in(region, mixed(silver_powder="0.1"), silver))) == found


# Canada: below pH 3.0 a product with alpha hydroxy acids is a prescription drug (Prescription Drug List); from 3.0 to 3.5 there is the
# guidance of the Hotlist, which is no law. The EU has an opinion alone.
@pytest.mark.parametrize(
    ("region", "ph", "found"),
    [
        ("Canada", "2.9", ["acid-too-sour stop"]),
        ("Canada", "3", ["acid-too-sour caution"]),
        ("Canada", "3.4", ["acid-too-sour caution"]),
        ("Canada", "3.5", []),
        ("EU", "2.9", ["acid-too-sour caution"]),
    ],
)
def test_the_law_of_the_region_on_acids_comes_before_its_guidance(region: str, ph: str, found: list[str]) -> None:
    measured = MeasuredPh(Fraction(ph), Fraction(ph) + 1, "meter")
    assert levels(find_acids_on_the_skin(seen_in(region, replace(mixed(lactic_acid="0.4"), ph=measured)))) == found


# Regulation (EC) 1223/2009 Art. 19(1)(c): above 30 months a time after opening, behind the open jar in months or years.
@pytest.mark.parametrize(
    ("keeps", "opened", "found"),
    [("30 months", "", 0), ("31 months", "", 1), ("36 months", "12 months", 0), ("36 months", "1 year", 0), ("36 months", "2 weeks", 1)],
)
def test_what_keeps_longer_than_30_months_says_how_long_it_is_good_once_opened(keeps: str, opened: str, found: int) -> None:
    one = replace(mixed(glycerin="3"), keeps=keeps, after_opening=opened)
    here = replace(STUDIO, recipes={"one": one}, profile=replace(STUDIO.profile, region="EU"))
    assert levels(find_times_after_opening_missing(here)) == ["after-opening-missing caution"] * found


def test_each_scent_is_told_of_once_and_one_of_which_nothing_is_published_without_a_figure() -> None:
    ours = scent("our scent")
    for options, count in ((("lavender essential oil", None), 1), (("our scent",), 0)):
        scents = Choice("scent", tuple(Name(name) if name else None for name in options), share("0.5"))
        powders = Choice("powder", (Name("kaolin clay"), None), share("0.5"))
        one = seen_in("EU", replace(mixed(glycerin="3"), choices=(scents, powders)), ours)
        (found,) = told(find_allergens_not_stated(one))
        assert found.remedy.count("Linalool") == count
        assert ("What is published" in found.remedy) is bool(count)


def test_a_bought_solution_is_asked_for_by_the_certificate_of_its_bottle() -> None:
    # 50 % is counted, and 53 % may be in it: 6 % more lye than is meant, and the superfat is 2 %.
    sheet = batch_with_lye(bought(strength=50, low=49, high=53, superfat=2))
    one = Batch("a batch", WholeRecipe("test"), sheet, sheet.own, STUDIO.constants)
    (found,) = told(find_too_much_lye(one))
    assert found.name == "lye-range-below-zero"
    assert "write the range that the certificate of the bottle in hand states" in found.remedy


def test_no_preservative_is_named_where_none_is_known_that_fits() -> None:
    sorbate = card_of("potassium sorbate")
    of = mixed(water="50", potassium_sorbate="0.4")
    others = {key: one for key, one in STUDIO.ingredients.items() if one is sorbate or one.kind is not sorbate.kind}
    for shelf, named in ((STUDIO.ingredients, True), (others, False)):
        (found,) = told(find_preservatives_that_do_not_fit(replace(STUDIO, ingredients=shelf, recipes={"one": of})))
        assert found.name == "preservation-in-part"
        assert ("of those known here that work" in found.remedy) is named


@pytest.mark.parametrize(("superfat", "cure"), [(5, None), (18, Cure("6 weeks", share(10), "ten bars weighed"))])
def test_the_order_of_a_soap_as_made_is_closed_by_weighing_its_cure(superfat: int, cure: Cure | None) -> None:
    made = soap({"olive oil": 50, "coconut oil": 30, "castor oil": 20}, lye(superfat=superfat))
    found = told(find_open_label_orders(seen_in("EU", replace(made, product="cold-process soap", listed=ListedAs.MADE, cure=cure))))
    assert {one.name for one in found} == {"label-order-open"}
    assert all("water and free fat vary" in one.remedy for one in found)
    assert all(("weigh bars before and after the cure" in one.remedy) is (cure is None) for one in found)


@pytest.mark.parametrize(
    ("question", "said"),
    [
        (None, "Use more of the one or less of the other, or keep one of them below 1 %."),
        (Question("glycerin", "", 1), "Ask the supplier of glycerin which of its parts is the first below one per cent"),
        (Question("glycerin", "sorbitol", 1), "Ask the supplier of glycerin what share of it is sorbitol"),
    ],
)
def test_what_closes_an_order_is_asked_for(question: Question | None, said: str) -> None:
    one = seen_in("EU", mixed(glycerin="3"))
    (variant,) = one.filling.variants
    open_list = replace(variant.ingredients, open_pairs=(("glycerin", "sunflower oil"),), question=question)
    (found,) = told(find_open_label_orders(replace(one, filling=replace(one.filling, variants=(replace(variant, ingredients=open_list),)))))
    assert said in found.remedy


def test_without_the_cards_of_the_alkalis_nobody_asks_which_is_meant() -> None:
    olive = card_of("olive oil")
    own = replace(olive, figures={**olive.figures, "saponification": figures(135)}, replaces=olive)
    for left_out, asked in ((), True), (("sodium hydroxide", "potassium hydroxide"), False):
        shelf = {key: own if one is olive else one for key, one in STUDIO.ingredients.items() if key not in left_out}
        (found,) = told(find_saponification_far_off(replace(STUDIO, ingredients=shelf)))
        assert ("Is it in sodium hydroxide?" in found.remedy) is asked


def test_what_a_class_fills_of_a_recipe_that_nobody_knows_is_no_second_finding() -> None:
    a_class = next(iter(STUDIO.classes.values()))
    jar = next(iter(STUDIO.containers.values()))
    make = replace(a_class.makes[0], recipe=Name("no such recipe"), also=(ToFill(Fill(Name(jar.name), grams(10_000)), 1, 0),))
    here = replace(STUDIO, recipes={}, classes={"one": replace(a_class, makes=(make,))})
    assert levels(find_fills_that_do_not_fit(here)) == []


LOTION, LESSON = "recipes/plain-lotion.yaml", "classes/one-lotion/lesson.md"
DROPS = "Add 400 drops of lavender essential oil"


# Rows: the case, the file that is changed, and how; what is then found, and what is not said.
@pytest.mark.parametrize(
    ("case", "file", "before", "after", "found", "silent"),
    [
        # A pH of a kind of product of which nobody knows a usual one.
        ("ph-not-for-skin", LOTION, "product: lotion", "product: bath salts", "", "usually has pH"),
        # As much as a portion may take, or drops of what nobody chooses, are no finding.
        ("amount-typed-too-high", LESSON, DROPS, "Add 2 drops of lavender essential oil", "amount-typed-too-high", "2 drops"),
        ("amount-typed-too-high", LESSON, DROPS, "Add 9 drops of glycerin", "3 % lavender", "9 drops"),
        # No region but the EU and the United Kingdom has a rule on what looks like food.
        ("food-look-alike", "studio.yaml", "region: UK", "region: US", "(common practice; the EU has it", "Food Imitations"),
        # Words on age change the body in the US and in Canada, not in the EU (common practice, no source).
        ("claim-doubtful", "pages/about.md", "100 % natural", "an anti-ageing", "claim-doubtful", "claim-forbidden"),
        # One group weighs once for all.
        ("group-without-one-pot", "classes/one-lotion/class.yaml", "one for each student", "one for the class", "", "group-without"),
        # A flame beside what a whole phase holds, by a name of its own.
        ("flame-near-vapour", LOTION, "name: scent", "name: smell", "mention-unknown", "flame-near-vapour"),
        # Three temperatures of the lye in one sentence: which of them it has in the end is not known.
        (
            "mixed-too-warm",
            "classes/one-bar/lesson.md",
            "Check that the oils and the lye are both at 40 °C / 104 °F.",
            "The lye falls from 90 °C through 60 °C to 40 °C.",
            "",
            "mixed-too-warm",
        ),
        # Fat that rounds to nothing warms nothing.
        (
            "mixed-too-cool",
            "recipes/plain-bar.yaml",
            "olive oil: 70 %\n      coconut oil: 30 %",
            "olive oil: 99.9999 %\n      coconut oil: 0.0001 %",
            "amount-weighs-nothing",
            "mixed-too-cool",
        ),
    ],
)
def test_a_twin_is_told_of_with_other_words_or_not_at_all(
    tmp_path: Path, case: str, file: str, before: str, after: str, found: str, silent: str
) -> None:
    err = check(studio_of(case, tmp_path, file, (before, after)))[2]
    assert found in err and silent not in err


def test_a_percentage_is_compared_where_there_are_no_oils_too(tmp_path: Path) -> None:
    studio = studio_of("amount-typed-too-high", tmp_path, LESSON, (DROPS, "Add 9 % glycerin"))
    for file in (LOTION, LESSON):
        text = (studio / file).read_text(encoding="utf-8").replace("sunflower oil", "sea salt").replace("emulsifying wax", "white sugar")
        (studio / file).write_text(text, encoding="utf-8")
    assert '"9 % glycerin": what is worked out for Glycerin is 3 %' in check(studio)[2]


def test_words_on_age_are_fine_in_the_eu(tmp_path: Path) -> None:
    studio = studio_of("claim-doubtful", tmp_path, "pages/about.md", ("100 % natural", "an anti-ageing"))
    profile = studio / "studio.yaml"
    profile.write_text(profile.read_text(encoding="utf-8").replace("region: US", "region: EU"), encoding="utf-8")
    assert "claim-" not in check(studio)[2]


def test_what_a_phase_holds_is_handled_where_the_phase_is_named(tmp_path: Path) -> None:
    studio = studio_of("flame-near-vapour", tmp_path, LOTION, ("name: scent", "name: smell"))
    lesson = studio / LESSON
    lesson.write_text(lesson.read_text(encoding="utf-8").replace("{scent} of the scent", "{smell}"), encoding="utf-8")
    assert "flame-near-vapour (stop)" in check(studio)[2]


def test_a_flame_that_is_put_out_once_the_scent_is_stirred_in_has_burnt_beside_it(tmp_path: Path) -> None:
    stirred = "Stir in {scent} of the scent."
    studio = studio_of("flame-near-vapour", tmp_path, LESSON, (stirred, f"{stirred}\n5. Turn off the gas ring."))
    assert "flame-near-vapour (stop)" in check(studio)[2]


@pytest.mark.parametrize(
    ("words", "is_found"),
    [
        ("Stir in {scent} of the scent. Turn off the gas ring.", True),
        ("Turn off the gas ring. Stir in {scent} of the scent.", False),
        ("Turn off the gas ring and stir in {scent} of the scent.", False),
        # What stands in braces at the beginning of a sentence belongs to it, and not to the one before.
        ("Stir it well. {scent} of the scent goes in last, before somebody turns it off. Turn off the gas ring.", True),
        ("Turn off the gas ring. {scent} of the scent goes in last.", False),
    ],
)
def test_within_a_step_the_order_of_its_sentences_counts(tmp_path: Path, words: str, is_found: bool) -> None:
    studio = studio_of("flame-near-vapour", tmp_path, LESSON, ("Stir in {scent} of the scent.", words))
    assert ("flame-near-vapour (stop)" in check(studio)[2]) is is_found


# A name that is misspelt means the one that it is most like: the other oil is in no step all the same.
def test_a_misspelt_name_means_one_ingredient_and_no_more(tmp_path: Path) -> None:
    rest = ("stir in everything else", "stir in {phenoxyethanol and ethylhexylglycerin blend}")
    studio = studio_of("amount-typed-too-high", tmp_path, LESSON, (DROPS, "Stir"), ("{sunflower oil}", "{sunflowr oil}"), rest)
    text = (studio / LOTION).read_text(encoding="utf-8").replace("sunflower oil: 12 %", "sunflower oil: 7 %\n      safflower oil: 5 %")
    (studio / LOTION).write_text(text, encoding="utf-8")
    found = [one for one in pipeline.check(studio, on=date(2027, 1, 1)).findings if one.name == "ingredient-in-no-step"]
    assert ["the recipe holds safflower oil, and no step" in one.wrong for one in found] == [True]


# What water neither dissolves nor carries away as a powder stays in the sieve of a drain (common practice, no source).
@pytest.mark.parametrize(
    ("name", "clogs"),
    [
        *((one, True) for one in ("rose petals", "green tea leaves", "ground coffee", "rolled oats")),
        *((one, False) for one in ("honey", "goat milk", "pumice", "oat flour", "rice flour", "cocoa powder")),
    ],
)
def test_pieces_clog_a_drain_and_powders_do_not(name: str, *, clogs: bool) -> None:
    bath = replace(recipe(phase("all", {"sea salt": share(90), name: share(10)})), product="bath salts")
    assert ("plants-in-drain caution" in levels(find_plants_out_of_place(replace(STUDIO, recipes={"one": bath})))) is clogs
