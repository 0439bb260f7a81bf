"""One batch in two kinds of container: what each document says of it."""

import re
from collections.abc import Mapping
from fractions import Fraction

import pytest

from builder.compose.edition import Edition
from builder.compose.recipe.json_number import number
from builder.compose.recipe.weigh_table import batch_table
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import made_at, product_json
from tests.page_text import words_of

DATE = "print/first/2027-02-06"
CLASS_YAML = FILES["classes/first/class.yaml"].replace(
    "  salts: {each student: 2 containers, at home: [500 g]}",
    "  salts:\n    each student: 2 containers\n    left in each cup: 1 g\n    at home: [500 g]\n"
    "    also fills: [{container: 2 fl oz jar, weight: 50 g, measured: one filled, each student: 1 container, spare: 2 containers}]",
)
RECIPE = FILES["recipes/salts.yaml"].replace("heat to: 70 degC", "heat to: 70 degC\n    steams away: {share: 5 %, measured: three times}")
LESSON = FILES["classes/first/lesson.md"].replace("4. Fill {portion}", "4. Pour {cup} into the cup, and {portion}")


@pytest.fixture(scope="module")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    changed = {"classes__first__class_yaml": CLASS_YAML, "recipes__salts_yaml": RECIPE, "classes__first__lesson_md": LESSON}
    changed["recipes__salts_yaml"] = RECIPE.replace("{glycerin: 100 g}", "{glycerin: 60 g, water: 40 g}")
    return read_edition(write_studio(tmp_path_factory.mktemp("two"), **changed))


@pytest.fixture(scope="module")
def documents(edition: Edition) -> dict[str, str]:
    names = ("teacher", "bench-cards", "dose-cards", "workings", "labels-salts--and-others")
    sheets = (f"{DATE}/{name}.pdf" for name in names)
    made = made_at(edition, "site/classes/first.html", "print/first/take-home-salts--500-g.pdf", *sheets)
    return {path: words_of(html) for path, html in made.items()}


def test_the_batch_is_enough_for_both_kinds(edition: Edition) -> None:
    sheet = next(one for one in edition.plans if one.students == 3)
    made = sheet.made[0]
    own, jar = made.batch.fillings
    assert [one.in_all for one in made.containers] == [6, 5]
    assert made.batch.grams.total.grams == 6 * (113 + 1) + 5 * (50 + 1)
    assert (own.portions.yields, jar.portions.yields) == (6, 5)
    assert jar.portions.left == own.portions.left


def test_doses_follow_the_container(edition: Edition) -> None:
    own, jar = edition.plans[0].made[0].batch.fillings
    assert own.doses[0].at_most.grams > jar.doses[0].at_most.grams


def test_teachers_read_the_cup_and_the_container(documents: Mapping[str, str]) -> None:
    page = documents[f"{DATE}/teacher.pdf"]
    for text in (
        "6 jars (4 fl oz jar) and 5 jars (2 fl oz jar) in all.",
        "114 g (4.02 oz) for each 4 fl oz jar",
        "113 g (3.98 oz) in each 4 fl oz jar",
        "51 g (1.79 oz) for each 2 fl oz jar",
        "all containers are filled from 939 g",
        "Pour 114 g into the cup",
    ):
        assert text in page, text


def test_a_heated_phase_says_its_weight_again(documents: Mapping[str, str]) -> None:
    page = documents[f"{DATE}/teacher.pdf"]
    weight = re.search(
        r"make up with hot water, so that it holds ([\d.]+) g again\. This is likely to take about 5 g \(three times\)", page
    )
    assert weight
    assert weight[1] == "93.9"  # a tenth of 939 g
    home = documents["print/first/take-home-salts--500-g.pdf"]
    assert "make up with hot water, so that it holds 50 g (1.75 oz) again." in home
    assert "likely" not in home


def test_bench_cards_and_class_page_name_both(documents: Mapping[str, str]) -> None:
    bench = documents[f"{DATE}/bench-cards.pdf"]
    assert "Each of you fills 2 jars and 1 jar" in bench
    assert "114 g in your cup (for the 4 fl oz jar) 113 g in each (4 fl oz jar) 51 g in your cup (for the 2 fl oz jar)" in bench
    page = documents["site/classes/first.html"]
    assert "2 jars, 113 g (3.98 oz) in each and 1 jar of 50 g" in page


# 1 % of 113 g and of 50 g, on a scale that reads to 0.1 g; drops of 1.261 g/mL, 18 to the millilitre.
def test_the_most_that_may_be_added_stands_beside_each_kind(documents: Mapping[str, str], edition: Edition) -> None:
    cards = documents[f"{DATE}/dose-cards.pdf"]
    for card in ("113 g in one container (4 fl oz jar)", "50 g in one container (2 fl oz jar)"):
        assert card in cards
    assert "1.1 g" in cards.partition("2 fl oz jar")[0]
    assert "0.5 g" in cards.partition("50 g in one container")[2]
    most = "at most 1.1 g for each container", "at most 0.5 g for each container"
    for name in ("teacher", "bench-cards"):
        page = documents[f"{DATE}/{name}.pdf"]
        kinds = page.partition("Scent in the 4 fl oz jar")[2].partition("Scent in the 2 fl oz jar")
        assert all(words in part.replace("At most", "at most") for words, part in zip(most, (kinds[0], kinds[2]), strict=True)), name
    assert "4 fl oz jar: 1.1 g, about 16 drops; 2 fl oz jar: 0.5 g, about 7 drops" in documents[f"{DATE}/workings.pdf"]
    planned = next(one for one in edition.plans if one.students == 3).made[0].batches[0]
    notes = " ".join(batch_table(planned.batch, "").notes).replace("\u00a0", " ")
    assert "Scent in the 2 fl oz jar: lavender essential oil (about 7 drops) or no scent: at most 0.5 g" in notes
    assert "Fills 6 containers (4 fl oz jar) of 113 g (3.985 oz) and 5 containers (2 fl oz jar) of 50 g (1.763 oz); " in notes


def test_each_kind_has_its_labels(documents: Mapping[str, str]) -> None:
    sheet = documents[f"{DATE}/labels-salts--and-others.pdf"]
    assert sheet.count("Net Wt 3.98 oz (113 g)") == 6
    assert sheet.count("Net Wt 1.76 oz") == 5


def test_json_holds_both(edition: Edition) -> None:
    sheet = next(one for one in edition.plans if one.students == 3)
    first = product_json(sheet, "salts")["batches"][0]
    portions = first["also fills"][0]["portions"]
    assert (portions["container"], portions["wanted"], portions["yields"]) == ("2 fl oz jar", 5, 5)
    assert [portions[key] for key in ("fill", "poured", "all from")] == [number(Fraction(value)) for value in (50, 51, 939)]
    assert first["batch"]["portions"]["poured"] == number(Fraction(114))
    assert first["batch"]["columns"][0]["top up"][0]["phase"] == "warm"
