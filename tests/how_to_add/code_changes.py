"""Additions to the program: a finding, a key, a sum, a kind of ingredient, a document, a page of the reference. All of it is invented."""

from builder.library import CONTENT
from tests.how_to_add.change import Addition, after, at_the_end, both, new

TRIED = "tests/how_to_add/tried.py::"
RULE = '''
"""Oils of the moon in a bar."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio


@rule_on(STUDIO, FindingKind("moonlit-bar", CAUTION, "A bar is made with an oil of the moon."))
def find_moonlit_bars(studio: Studio) -> Iterator[Finding]:
    """Look for the oil in what is made with lye."""
    for recipe in studio.recipes.values():
        for line in recipe.lines if recipe.lye else ():
            if line.ingredient.key == "moonpetal oil":
                yield caution("moonlit-bar", line.place, "This bar is made with an oil of the moon.", "Take another oil.")
'''
TWIN = '''
"""An oil of the moon is no matter in a lotion."""

from builder.check.formula.moonlit_bar import find_moonlit_bars
from tests.how_to_add.tried import oil_of_lotion, studio_with


def test_moonpetal_oil_in_a_lotion_is_met_in_silence() -> None:
    assert list(find_moonlit_bars(studio_with(oil_of_lotion("moonpetal oil: 1 %")))) == []
'''
SUM = '''


def _moon_sum(recipe: Recipe, total: Mass) -> Working:
    """Take the batch twice."""
    return Working(SumRule.MOON_SUM, recipe.name, (Given("batch", total.grams, "g"),), total.grams * 2, "g")
'''
SUM_CASE = '''
"""The moon sum, against an example that is invented."""

from tests.how_to_add.tried import bar_of, studio_with


def test_the_moon_sum() -> None:
    (found,) = [one for one in bar_of(studio_with()).workings if one.rule == "moon sum"]
    assert found.result == 2 * 800
'''
VIEW = '''
"""What `sheets/moon-card.html` shows."""

from dataclasses import dataclass

from builder.compose.views.frame import SheetFrame


@dataclass(frozen=True)
class MoonCardView:
    """A card with one sentence."""

    frame: SheetFrame
    title: str
    says: str
'''
COMPOSER = '''
"""A card that says how many classes there are."""

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import sheet_frame
from builder.compose.views.moon_card import MoonCardView
from builder.model.studio import Studio
from builder.words.say import say


def compose_moon_card(edition: Edition, studio: Studio, _: Address) -> Composed:
    """Make the card."""
    title = say("Moon card")
    return Composed(MoonCardView(sheet_frame(edition, title, title), title, say("Classes: {number}", number=len(studio.classes))))
'''
TEMPLATE = """
{# Takes: MoonCardView #}
{% extends "frames/sheet.html" %}
{% block main %}
<h1>{{ view.title }}</h1>
<p>{{ view.says }}</p>
{% endblock %}
"""
ROW = '    DocumentKind("moon card", STUDIO, "moon-card.pdf", MoonCardView, "sheets/moon-card.html", compose_moon_card, STUDENTS),'
BAR = (CONTENT.parent / "tests/findings/_sound/recipes/plain-bar.yaml").read_text(encoding="utf-8")
CODE_CHANGES = (
    Addition(
        "A finding",
        {
            "tests/findings/moonlit-bar/recipes/plain-bar.yaml": new(
                BAR.replace("olive oil: 70 %", "olive oil: 65 %\n      moonpetal oil: 5 %")
            ),
            "tests/findings/moonlit-bar/expected.txt": new("(written by the command)\n"),
            "builder/check/formula/moonlit_bar.py": new(RULE),
            "builder/check/rules.py": after(
                ("from builder.check.formula.heat", "from builder.check.formula.moonlit_bar import find_moonlit_bars"),
                ("    find_what_is_heated_too_far,", "    find_moonlit_bars,"),
            ),
            "tests/check/test_moonlit_bar.py": new(TWIN),
        },
        (
            TRIED + "test_a_finding_is_made_with_its_example",
            "tests/check/test_moonlit_bar.py::test_moonpetal_oil_in_a_lotion_is_met_in_silence",
            "tests/test_findings.py::test_nothing_is_found_in_the_sound_studio",
        ),
    ),
    Addition(
        "A key",
        {
            "builder/read/shapes/recipe.py": after(
                (
                    '    """Cautions for the label, each a sentence."""',
                    '    moon: Text = maybe("moon", "", "full")\n    """The moon under which it is made."""',
                )
            ),
            "builder/model/recipe/recipe.py": after(('    code: str = ""', '    moon: str = ""')),
        },
        (TRIED + "test_a_key_is_read",),
    ),
    Addition(
        "A calculation",
        {
            "tests/reckon/test_moon_sum.py": new(SUM_CASE),
            "builder/reckon/recipe/batches.py": both(
                after(("    workings = [*formula.workings, sizing]", "    workings.append(_moon_sum(recipe, total))")), at_the_end(SUM)
            ),
            "tests/compose/test_sums.py": after(('        "Test",', '        "Test",')),
            "builder/model/recipe/working.py": after(('    PORTIONS = "portions"', '    MOON_SUM = "moon sum"')),
            "builder/compose/recipe/wording.py": after(("RULES = {", '    SumRule.MOON_SUM: message("the batch twice"),')),
        },
        (
            "tests/reckon/test_moon_sum.py::test_the_moon_sum",
            TRIED + "test_a_sum_is_told_and_stands_in_the_json",
            "tests/compose/test_sums.py::test_every_rule_has_words",
            "tests/compose/test_sums.py::test_the_sums_are_those_that_the_table_does_not_show",
        ),
    ),
    Addition(
        "A kind of ingredient",
        {
            "builder/model/recipe/ingredient_kind.py": after(('    OTHER = "other"', '    MOONDUST = "moondust"')),
            "builder/compose/supplies/shopping_words.py": after(
                ('    message("Alkali"): (', '    message("Of the moon"): (IngredientKind.MOONDUST,),')
            ),
        },
        (TRIED + "test_a_kind_of_ingredient_is_on_a_card_and_has_its_group_when_buying",),
    ),
    Addition(
        "A document",
        {
            "builder/compose/views/moon_card.py": new(VIEW),
            "layouts/sheets/moon-card.html": new(TEMPLATE),
            "builder/compose/documents/moon_card.py": new(COMPOSER),
            "builder/compose/document_table.py": after(
                ("from builder.compose.documents.labels", "from builder.compose.documents.moon_card import compose_moon_card"),
                ("from builder.compose.views.labels", "from builder.compose.views.moon_card import MoonCardView"),
                ('    DocumentKind("page not found"', ROW),
            ),
            "tests/compose/test_documents.py": after(('            "print/label-test-page.pdf",', '            "print/moon-card.pdf",')),
        },
        (
            TRIED + "test_a_document_is_made_for_whom_its_row_says",
            "tests/compose/test_documents.py::test_every_document_has_its_place",
            "tests/compose/test_document_table.py::test_a_template_takes_the_view_of_its_row_and_its_styles_are_there[moon card]",
        ),
    ),
    Addition(
        "A page of the reference",
        {
            "content/reference/moon.md": new("# The moon\n\nWhat is said of it is invented.\n"),
            "builder/reference/pages.py": after(("TOPICS = (", '    "moon",')),
        },
        (TRIED + "test_a_page_stands_in_the_reference",),
    ),
)
