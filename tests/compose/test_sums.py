"""The sums on paper: which lines stand there, and their sources below, numbered once each."""

from fractions import Fraction

from builder.compose.lye.lye_range import range_sentence, view_range
from builder.compose.lye.soap_words import soap_facts
from builder.compose.recipe.sums import view_sums
from builder.compose.recipe.wording import RULES
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.size import OilsSize
from builder.model.recipe.working import SumRule
from tests.making import cards, fat, grams, lye, scale, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
STOCK = cards(fat("olive oil", 185, 196), fat("coconut oil", 248, 265))
SHEET = worked(soap({"olive oil": 70, "coconut oil": 30}, lye(superfat=6)), BAR, OilsSize(grams(500)), STOCK, [scale("0.1")])


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_the_sums_are_those_that_the_table_does_not_show() -> None:
    rows = view_sums("Soap", SHEET).rows
    assert [row.of for row in rows] == [
        "Test",
        "Olive oil",
        "Coconut oil",
        "Fat, together",
        "The lye",
        "Sodium hydroxide",
        "The liquid of the lye",
        "Olive oil",
        "Coconut oil",
        "Fat as weighed, together",
        "Sodium hydroxide",
        "Weights in g",
        "Containers",
    ]
    olive = next(row for row in rows if row.of == "Olive oil")
    assert plain(olive.given) == "weight 350 g; saponification value 190.5 mg/g [1]; molar mass of potassium hydroxide 56.1056 g/mol"
    assert plain(olive.result) == "1.1884 mol"


def test_a_source_is_named_once() -> None:
    assert view_sums("Soap", SHEET).notes == ("[1] a figure for this test, here",)


def test_every_rule_has_words() -> None:
    assert set(RULES) == set(SumRule)


def test_what_a_soap_becomes_adds_to_the_batch() -> None:
    facts = [(plain(fact.name), Fraction(plain(fact.value).removesuffix(" g"))) for fact in soap_facts(SHEET)]
    *parts, (last, total) = facts
    assert last == "Together, the weight of the batch"
    assert abs(sum(value for _, value in parts) - total) <= Fraction("0.05") * len(parts)


def test_the_range_in_one_sentence() -> None:
    assert range_sentence(sure(SHEET.grams.lye)) == (
        "If every figure and every weighing were off to one side at once, between 2.9% and 9.1% of the fat would find no lye, "
        "so no lye would be left over."
    )


def test_the_line_has_its_marks_in_order() -> None:
    span = view_range(sure(SHEET.grams.lye), "key")
    places = [Fraction(tick.left.removesuffix("%")) for tick in span.ticks]
    assert places == sorted(places)
    assert [tick.word for tick in span.ticks if tick.kind == "zero"] == ["0%"]
    left, width = (Fraction(text.removesuffix("%")) for text in (span.span_left, span.span_width))
    assert left < Fraction(span.typical_left.removesuffix("%")) < left + width
    assert places[0] <= left and left + width <= places[-1]
