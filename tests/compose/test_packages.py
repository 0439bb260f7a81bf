"""Several units in one package: the statement of net contents, how many labels there are, and to whom they go."""

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from pathlib import Path
from typing import cast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.compose.label.package_words import package_contents
from builder.model.dates.studio_class import ClassDate
from builder.model.label.language import Language
from builder.model.recipe.product import DeclaredBy
from builder.model.recipe.worked_batch import WorkedBatch
from builder.reckon.teaching.classes import reckon_class
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.compose.test_label_words import Batch, batch
from tests.composing import made_at, product_json
from tests.page_text import words_of
from tests.reckon.test_guests import QUICK, STUDIO, people
from tests.regions import region as region_of

OUNCE = Fraction("28.349523125")


ENGLISH = Language("English", "en_CA")
FRENCH = Language("French", "fr_CA")


def said(sheet: Batch, units: int, region: str = "US", container: str = "cut soap bar") -> str:
    languages = (ENGLISH, FRENCH) if region == "Canada" else (ENGLISH,)
    return "".join(
        run.text or "____" for run in package_contents(cast(WorkedBatch, sheet), sheet.own, region_of(region), units, container, languages)
    ).replace("\u00a0", " ")


# 16 CFR 500.27(a) and (c) (read): 6 bars of 3.4 oz (96.3 g), 1 lb 4.4 oz (578 g) in all; 5 cakes of 4 oz (113 g), 566 g in all; 10 packets
# of 2 oz (56.6 g), 566 g in all. It writes the pounds alone; from 16 oz on a label here has the ounces in all before them (21 CFR
# 701.13(j), fragments).
@pytest.mark.parametrize(
    ("units", "ounces", "container", "statement"),
    [
        (6, "3.4", "cut soap bar", "6 bars, Net Wt 3.4 oz (96.3 g) each, Total Net Wt 20.4 oz (1 lb 4.4 oz) 578 g"),
        (5, "4", "round mould", "5 containers, Net Wt 4 oz (113 g) each, Total Net Wt 20 oz (1 lb 4 oz) 566 g"),
        (10, "2", "muslin tea bag", "10 bags, Net Wt 2 oz (56.6 g) each, Total Net Wt 20 oz (1 lb 4 oz) 566 g"),
    ],
)
def test_the_published_packages(units: int, ounces: str, container: str, statement: str) -> None:
    assert said(batch(Fraction(ounces) * OUNCE), units, container=container) == statement


def test_volumes_other_regions_and_soap_that_has_not_been_weighed() -> None:
    assert (
        said(batch("118.3", DeclaredBy.VOLUME), 3, container="4 fl oz bottle")
        == "3 bottles, 4 fl oz (118 mL) each, Total 12 fl oz (354 mL)"
    )
    for region in ("EU", "UK", "Canada"):
        assert said(batch("96"), 3, region) == "3 × 96 g (288 g)"
    assert said(batch("4.25"), 3, "Canada") == "3 × 4.2 g (12 g) / 3 × 4,2 g (12 g)"
    soap = batch("110", made_with_lye=True)
    assert said(soap, 3) == "3 bars, Net Wt ____ each, Total Net Wt ____"
    assert said(soap, 3, "EU") == "3 × ____ = ____"


def test_a_package_has_one_label_and_what_is_left_its_own(tmp_path: Path) -> None:
    recipe = FILES["recipes/salts.yaml"].replace("weight: 113 g", "weight: 113 g, units in a package: 2")
    in_all = "salts: {each student: 4 containers, spare: 3 containers,"
    a_class = FILES["classes/first/class.yaml"].replace("salts: {each student: 2 containers,", in_all)
    edition = read_edition(write_studio(tmp_path, recipes__salts_yaml=recipe, classes__first__class_yaml=a_class))
    labels, sums = (f"print/first/2027-02-06/{name}.pdf" for name in ("labels-salts", "workings"))
    page, workings = (words_of(html) for html in made_at(edition, labels, sums).values())
    assert len(re.findall(r"2 jars, Net Wt 3\.98 oz \(113 g\) each, Total Net Wt 7\.97 oz \(226 g\)", page)) == 3 * 2 + 1
    assert len(re.findall("Batch: ", page)) == 3 * 2 + 2
    assert "Labels (one for a package of 2): 4 lavender essential oil, 4 no scent." in workings
    sheet = next(one for one in edition.plans if one.students == 3)
    product = product_json(sheet, "salts")
    assert [(one["chosen"]["scent"], one["units"], one["labels"], one["open"]) for one in product["labels"]] == [
        ("Lavender essential oil", 2, 4, 4), (None, 2, 3, 3), (None, 1, 1, 1)
    ]  # fmt: skip
    assert product["batches"][0]["batch"]["portions"]["units in a package"] == 2


@given(st.integers(1, 4), st.integers(1, 3), st.lists(st.sampled_from(["lavender oil", "no scent", ""]), max_size=8))
def test_packages_need_no_more_of_an_option_than_the_amounts_expect(units: int, packages: int, cells: Sequence[str]) -> None:
    fill = replace(STUDIO.recipes["meadow-lotion"].fill, units=units)
    recipes = {**STUDIO.recipes, "meadow-lotion": replace(STUDIO.recipes["meadow-lotion"], fill=fill)}
    makes = (replace(QUICK.makes[0], each_student=units * packages, spare=units),)
    when = ClassDate(datetime(2027, 6, 5, 10), 8)
    a_class = replace(QUICK, makes=makes, dates=(when,))
    roster = people(["scent"], [(cell,) for cell in cells])
    (made,) = reckon_class(replace(STUDIO, recipes=recipes, rosters={a_class.key: roster}), a_class, when)[0].made
    jars = made.containers[0].jars
    assert [jar.units for jar in jars] == [units] * (8 * packages + 1)
    scent = made.choices[0]
    labelled: Counter[str | None] = Counter()
    for jar in jars:
        labelled[dict(jar.variant.chosen)["scent"]] += jar.units
    for option in scent.options:
        most = next(one for one in made.batch.own.doses[0].each if one.option == option.option).to_have_ready
        assert most * labelled[option.option] <= option.expected
    assert sum(labelled.values()) == scent.portions
