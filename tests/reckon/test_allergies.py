"""The allergies of a roster beside what a class uses: what people write is met wherever it stands, and no unknown word is passed over.

What the words mean is common practice, no source; each row of `content/allergy_words.yaml` says so.
"""

from collections.abc import Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import replace
from datetime import datetime
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.place import Name
from builder.model.recipe.figure import Known, Source, SourceKind
from builder.model.recipe.ingredient import AllergenList, AllergenStatement
from builder.model.roster.allergy import Allergy, By
from builder.model.roster.roster import Roster, RosterRow
from builder.model.studio import Studio
from builder.reckon.roster.allergies import reckon_allergies
from builder.reckon.roster.allergy_terms import vocabulary_of
from builder.reckon.roster.guests import reckon_guests
from builder.reckon.roster.word_forms import runs_of, words_of
from tests.studios import example_studio

STUDIO, _ = example_studio()
WORDS = vocabulary_of(STUDIO)
LOTION, BALM, PARTY = (STUDIO.classes[key] for key in ("lotion-from-scratch", "bath-tea-and-lip-balm", "salts-and-scrub-party"))


def compared(
    studio_class: StudioClass, written: str, chosen: Mapping[tuple[str, str], str | None] | None = None, studio: Studio = STUDIO
) -> tuple[Allergy, ...]:
    return reckon_allergies(studio, studio_class, vocabulary_of(studio).terms(written), chosen or {})


def met(studio_class: StudioClass, written: str) -> set[str]:
    return {one.ingredient for allergy in compared(studio_class, written) for one in allergy.found}


def unclear(written: str) -> list[str]:
    return [word for term in WORDS.terms(written) for word in term.unclear]


@pytest.mark.parametrize(
    ("written", "families"),
    [
        ("nuts", {"tree nut", "peanut", "coconut"}),
        ("Nut allergy (severe!)", {"tree nut", "peanut", "coconut"}),
        ("tree-nuts", {"tree nut"}),
        ("PEANUTS", {"peanut"}),
        ("brazil nuts", {"tree nut"}),
        ("shea", {"tree nut"}),
        ("bee products", {"bee products"}),
        ("honey", {"bee products"}),
        ("lanolin", {"wool alcohols"}),
        ("wool alcohols", {"wool alcohols"}),
        ("gluten", {"wheat", "oat"}),
        ("soya", {"soy"}),
        ("ragweed", {"daisy family"}),
        ("allergic to oats", {"oat"}),
        ("cow's milk", {"milk"}),
        ("egg", {"egg"}),
    ],
)
def test_what_people_write_means_families(written: str, families: AbstractSet[str]) -> None:
    terms = list(WORDS.terms(written))
    assert {family for term in terms for family in term.families} == families
    assert unclear(written) == []


def test_an_ingredient_is_met_by_family_kind_name_and_part() -> None:
    by = {
        (one.ingredient, one.by)
        for written in ("nuts", "perfume", "sunflower", "polysorbate")
        for a in compared(LOTION, written)
        for one in a.found
    }
    assert {("Shea butter", By.FAMILY), ("Lavender essential oil", By.KIND), ("Sunflower oil", By.NAME), ("Emulsifying wax", By.PART)} <= by


@pytest.mark.parametrize(("name", "found"), [("Goat milk powder", True), ("Coconut milk powder", False)])
def test_a_name_that_only_sounds_so_is_not_met(name: str, *, found: bool) -> None:
    """Coconut milk is no milk (common practice, no source)."""
    card = replace(STUDIO.ingredients["sunflower oil"], name=name, also_called=(), label_name=None, allergens=())
    studio = replace(STUDIO, ingredients={**STUDIO.ingredients, "sunflower oil": card})
    assert any(one.ingredient == name for allergy in compared(LOTION, "milk", studio=studio) for one in allergy.found) is found


def test_the_latin_name_is_as_good_as_the_plain_one() -> None:
    assert met(LOTION, "Lavandula") == met(LOTION, "lavender") == {"Lavender essential oil"}


def test_what_everybody_uses_and_what_may_be_chosen_are_told_apart() -> None:
    (allergy,) = compared(LOTION, "lavender", {("meadow-lotion", "scent"): "Lavender essential oil"})
    assert [(one.choice, one.phase, one.taken) for one in allergy.found] == [("scent", "", True)]
    (allergy,) = compared(LOTION, "lavender", {("meadow-lotion", "scent"): None})
    assert [one.taken for one in allergy.found] == [False]
    (allergy,) = compared(LOTION, "shea")
    assert {(one.choice, bool(one.phase)) for one in allergy.found} == {("", True)}


# The lotion holds one preservative; its scents are two essential oils, its colour is mica.
@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("preservatives", {"Phenoxyethanol and ethylhexylglycerin blend"}),
        ("strong perfumes", {"Lavender essential oil", "Cedarwood essential oil"}),
        ("dyes", {"Mica"}),
    ],
)
def test_a_kind_of_ingredient_is_met_in_all_of_that_kind_and_in_nothing_else(written: str, meant: AbstractSet[str]) -> None:
    found = [one for allergy in compared(LOTION, written) for one in allergy.found]
    assert {one.ingredient for one in found} == meant and {one.by for one in found} == {By.KIND}


def test_bee_products_are_met_in_the_balm() -> None:
    assert "Beeswax" in met(BALM, "bee products")


def test_wool_alcohols_are_no_other_alcohols() -> None:
    assert met(LOTION, "wool alcohols") == set()


def test_coconut_milk_is_no_milk() -> None:
    assert not any("coconut" in name.casefold() for name in met(PARTY, "milk"))


@pytest.mark.parametrize("written", ["", " ", "none", "No", "n/a", "-", "nil", "none known", "no known allergies"])
def test_nothing_is_nothing(written: str) -> None:
    assert compared(LOTION, written) == ()


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ("penicillin", ["penicillin"]),
        ("lavendar", ["lavendar"]),
        ("all nuts but not coconut", ["but", "not"]),
        ("tolerates honey", ["tolerate"]),
        ("oil", ["oil"]),
        ("?", ["?"]),
        ("\u0444\u0443\u043d\u0434\u0443\u043a", ["\u0444\u0443\u043d\u0434\u0443\u043a"]),
    ],
)
def test_what_is_not_known_is_unclear(written: str, words: Sequence[str]) -> None:
    assert unclear(written) == words


def test_a_fragrance_allergen_may_be_in_every_scent_without_a_statement() -> None:
    (allergy,) = compared(LOTION, "linalool")
    assert ("Lavender essential oil", By.HELD) in {(one.ingredient, one.by) for one in allergy.found}
    unknown = replace(STUDIO.ingredients["lavender essential oil"], holds=())
    without = {key: unknown if one.name == unknown.name else one for key, one in STUDIO.ingredients.items()}
    (allergy,) = compared(LOTION, "linalool", studio=replace(STUDIO, ingredients=without))
    assert "Lavender essential oil" in allergy.unstated
    card = STUDIO.ingredients["lavender essential oil"]
    source = Source("s", "s", SourceKind.TRADE)
    stated = replace(
        card,
        allergen_statement=AllergenStatement(
            AllergenList.EXTENDED, {"linalool": (Fraction(0), Fraction(1))}, source, "lot 1", Known.SUPPLIER
        ),
    )
    studio = replace(STUDIO, ingredients={key: stated if one is card else one for key, one in STUDIO.ingredients.items()})
    (allergy,) = compared(LOTION, "linalool", studio=studio)
    assert [(one.ingredient, one.by) for one in allergy.found] == [("Lavender essential oil", By.STATEMENT)]
    assert "Lavender essential oil" not in allergy.unstated


def test_gloves_are_not_forgotten() -> None:
    (allergy,) = compared(LOTION, "latex")
    assert any("gloves" in mind for mind in allergy.minds)


@pytest.mark.parametrize("card", sorted({one.name for one in STUDIO.ingredients.values()}))
def test_every_ingredient_of_a_class_is_met_by_its_own_name_unless_that_says_too_much(card: str) -> None:
    term = next(iter(WORDS.terms(card.replace(" and ", " "))), None)
    too_general = set(words_of(card)) <= WORDS.too_much | WORDS.silent
    assert term is not None
    assert term.names or term.families or too_general


@given(st.text(max_size=60))
def test_no_word_is_passed_over(written: str) -> None:
    for term in WORDS.terms(written):
        if not (term.families or term.kinds or term.names or term.minds):
            assert term.unclear or set(words_of(term.written)) <= WORDS.silent


def test_those_who_wait_are_compared_too_and_counted_with_nobody() -> None:
    when = ClassDate(datetime(2027, 6, 5, 10), 1, waiting=1)
    rows = (RosterRow(Name("A"), None, None, "nuts", {}), RosterRow(Name("B"), None, None, "lavender", {}, waiting=True))
    studio = replace(STUDIO, rosters={LOTION.key: Roster((), rows)})
    a_class = replace(LOTION, dates=(when,))
    assert [one.name for one in reckon_guests(studio, a_class, when)] == ["A"]
    (waits,) = reckon_guests(studio, a_class, when, waiting=True)
    assert waits.name == "B"
    assert waits.compared[0].found


# English grammar: after a hissing sound the plural ends in -es, and -y after a consonant becomes -ies; -ss, -us and -is are no plurals.
@pytest.mark.parametrize(
    ("several", "one"),
    [("peaches", "peach"), ("radishes", "radish"), ("boxes", "box"), ("grasses", "grass"), ("berries", "berry"), ("nuts", "nut"),
     ("citrus", "citrus"), ("oasis", "oasis"), ("gas", "gas"), ("Brazil nut's", "brazil nut")],
)  # fmt: skip
def test_a_plural_is_the_word_that_it_is_of(several: str, one: str) -> None:
    assert words_of(several) == tuple(one.split())


def test_runs_of_words_are_all_that_stand_beside_one_another_the_longest_first() -> None:
    pairs = [(0, ("oil", "of")), (1, ("of", "almonds"))]
    assert list(runs_of(("oil", "of", "almonds"))) == [
        (0, ("oil", "of", "almonds")), *pairs, (0, ("oil",)), (1, ("of",)), (2, ("almonds",))
    ]  # fmt: skip
