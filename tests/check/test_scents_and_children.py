"""Usual recipes with scents, for adults, are silent; so are classes for children of whom staff keep away what burns."""

import contextlib
import io
import json
from pathlib import Path

import pytest

from builder import cli
from tests.test_findings import FINDINGS, check, lay_out

OIL = """\
name: Plain {kind}
product: {kind}
amounts: percent of total
phases:
  - name: all
    ingredients:
      sunflower oil: rest
      {thickener}: 20 %
      vitamin E: 1 %
      {scent}
fills: {{container: 4 fl oz bottle, weight: 100 g, measured: "one filled and weighed"}}
{more}"""
LESSON = """\
# One lotion

We make one thing and take it home.

## Make it (students, 60 min)

1. Weigh, mix, and fill {portion} into each container.
"""


def found(tmp_path: Path, recipe: str | None, lesson: str | None = LESSON, case: Path | None = None) -> str:
    studio = tmp_path / "studio"
    lay_out(case, studio)
    if recipe:
        (studio / "recipes" / "plain-lotion.yaml").write_text(recipe, encoding="utf-8")
    path = studio / "classes" / "one-lotion" / "class.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("at home: [250 g]", "at home: [1 kg]"), encoding="utf-8")
    if lesson:
        (studio / "classes" / "one-lotion" / "lesson.md").write_text(lesson, encoding="utf-8")
    return check(studio)[2]


# What the limits of `scent_limits.csv` leave a usual recipe: each dose is at or below every row that speaks of it.
@pytest.mark.parametrize(
    ("kind", "scent"),
    [
        ("balm", "lavender essential oil: 1 %"),
        ("balm", "geranium essential oil: 1 %"),
        ("balm", "frankincense essential oil: 1 %"),
        ("balm", "oregano essential oil: 1 %"),
        ("balm", "clove bud essential oil: 0.5 %"),
        ("balm", "sweet orange essential oil: 1 %"),
        ("balm", "bergamot essential oil: 0.35 %"),
        ("balm", "bergamot essential oil, furocoumarin-free: 1 %"),
        ("balm", "distilled lime essential oil: 1 %"),
        ("lip balm", "peppermint essential oil: 0.5 %"),
        ("lip balm", "peppermint flavour oil: 1 %"),
    ],
)
def test_a_usual_dose_for_adults_is_silent(tmp_path: Path, kind: str, scent: str) -> None:
    assert found(tmp_path, OIL.format(kind=kind, thickener="beeswax", scent=scent, more="")) == ""


# The same dose of the same oil where it is known to burn or to sensitise.
@pytest.mark.parametrize(
    ("kind", "scent", "name"),
    [
        ("balm", "cassia essential oil: 1 %", "over-usual-limit"),
        ("balm", "oregano essential oil: 1.2 %", "over-usual-limit"),
        ("balm", "exotic basil essential oil: 0.5 %", "over-usual-limit"),
        ("balm", "lemon myrtle essential oil: 0.3 %", "over-usual-limit"),
        ("balm", "pennyroyal essential oil: 0.3 %", "ingredient-banned"),
        ("lip balm", "clove bud essential oil: 0.2 %", "ingredient-banned"),
        ("lip balm", "lavender essential oil: 1 %", "scent-over-usual"),
        ("lip balm", "lemongrass essential oil: 0.4 %", "over-usual-limit"),
    ],
)
def test_a_dose_over_what_is_published_is_said(tmp_path: Path, kind: str, scent: str, name: str) -> None:
    assert f": {name} (" in found(tmp_path, OIL.format(kind=kind, thickener="beeswax", scent=scent, more=""))


def test_the_certificate_of_a_supplier_comes_before_what_is_published(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / "limit-not-proven--oil", studio)
    (studio / "shelf" / "ingredients").mkdir(parents=True)
    (studio / "shelf" / "sources.yaml").write_text("our-supplier: {title: Our supplier, kind: trade}\n", encoding="utf-8")
    card = """\
name: Tea tree essential oil
label name: {inci: Melaleuca Alternifolia Leaf Oil, plain: tea tree leaf oil, known: supplier}
kind: essential oil
counts as: other
mixes with: oil
declared as: fragrance
oil: tea tree
certificate: {contains: {Methyl Eugenol: at most 0.02 %}, source: our-supplier, at: certificate of lot 7, known: supplier}
"""
    path = studio / "shelf" / "ingredients" / "tea-tree-essential-oil.yaml"
    path.write_text(card, encoding="utf-8")
    assert "limit-not-proven" not in check(studio)[2]
    path.write_text(card.replace("0.02 %", "0.05 %"), encoding="utf-8")
    assert "limit-not-proven" in check(studio)[2]


def test_tea_tree_is_for_people_from_twelve_on(tmp_path: Path) -> None:
    recipe = (FINDINGS / "not-for-children" / "recipes" / "plain-lotion.yaml").read_text(encoding="utf-8")
    recipe = recipe.replace("essential oil: 0.2 %", "essential oil: 0.4 %")
    assert "not-for-children (stop)" in found(tmp_path / "eleven", recipe.replace("youngest user: 8", "youngest user: 11"))
    assert found(tmp_path / "twelve", recipe.replace("youngest user: 8", "youngest user: 13")) == ""


def test_what_staff_weigh_ahead_is_not_taken_from_the_bottle(tmp_path: Path) -> None:
    case = FINDINGS / "not-weighed-ahead"
    lesson = (case / "classes" / "one-lotion" / "lesson.md").read_text(encoding="utf-8")
    ahead = (
        "## Weigh the concentrates (ahead, 10 min)\n\n1. Weigh {phenoxyethanol and ethylhexylglycerin blend} of preservative into a "
        "covered cup.\n2. Weigh {scent} of each scent for each bottle.\n\n## Weigh and melt"
    )
    assert "not-weighed-ahead" not in found(tmp_path, None, lesson.replace("## Weigh and melt", ahead), case)


def test_hot_wax_stops_classes_with_minors_and_cautions_those_of_adults(tmp_path: Path) -> None:
    case = FINDINGS / "supervision-too-little--hot-wax-and-minors"
    studio = tmp_path / "studio"
    lay_out(case, studio)
    path = studio / "classes" / "one-lotion" / "class.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("youngest: 10", "youngest: 18"), encoding="utf-8")
    told = check(studio)[2]
    assert "(stop)" not in told
    path.write_text(
        path.read_text(encoding="utf-8").replace("enrolled: 8", "enrolled: 9").replace("seats: 8", "seats: 9"), encoding="utf-8"
    )
    assert "supervision-too-little (caution)" in check(studio)[2]


def test_a_certificate_comes_before_handbooks_and_standards(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / "over-usual-limit--cinnamon-bark", studio)
    (studio / "shelf" / "ingredients").mkdir(parents=True)
    (studio / "shelf" / "sources.yaml").write_text("our-supplier: {title: Our supplier, kind: trade}\n", encoding="utf-8")
    card = """\
name: Cinnamon bark essential oil
label name: {inci: Cinnamomum Zeylanicum Bark Oil, plain: cinnamon bark oil, known: supplier}
kind: essential oil
counts as: other
mixes with: oil
declared as: fragrance
oil: cinnamon bark
certificate: {at most: {leave-on: MOST}, source: our-supplier, at: certificate of lot 7, known: supplier}
"""
    path = studio / "shelf" / "ingredients" / "cinnamon-bark-essential-oil.yaml"
    path.write_text(card.replace("MOST", "1.5 %"), encoding="utf-8")
    assert check(studio)[2] == ""
    path.write_text(card.replace("MOST", "0.5 %"), encoding="utf-8")
    assert "Cinnamon bark essential oil, leave-on: certificate of lot 7" in check(studio)[2]


def test_a_face_cream_is_judged_as_one_by_its_name(tmp_path: Path) -> None:
    recipe = OIL.format(kind="balm", thickener="beeswax", scent="tea tree essential oil: 0.4 %", more="")
    assert found(tmp_path / "body", recipe) == ""
    assert "over-usual-limit (caution)" in found(tmp_path / "face", recipe.replace("name: Plain balm", "name: Plain face balm"))
    assert found(tmp_path / "said", recipe.replace("name: Plain balm", "name: Plain face balm") + "used on: [body]\n") == ""


def test_an_irritant_oil_without_a_limit_for_soap_is_said_and_a_mild_one_is_not(tmp_path: Path) -> None:
    bar = (FINDINGS / "_sound" / "recipes" / "plain-bar.yaml").read_text(encoding="utf-8")
    for scent, said in (("oregano", True), ("lavender", False), ("spearmint", False)):
        studio = tmp_path / scent
        lay_out(None, studio)
        scented = bar.replace("lye:\n", f"  - name: at trace\n    ingredients:\n      {scent} essential oil: 2 %\nlye:\n", 1)
        (studio / "recipes" / "plain-bar.yaml").write_text(scented, encoding="utf-8")
        assert ("scent-without-limit" in check(studio)[2]) is said


def test_zinc_oxide_that_is_there_for_the_skin_is_declared_by_its_weight(tmp_path: Path) -> None:
    case = FINDINGS / "colour-or-not"
    recipe = (case / "recipes" / "plain-lotion.yaml").read_text(encoding="utf-8")
    assert "colour-or-not" in found(tmp_path / "open", recipe, None, case)
    assert found(tmp_path / "said", recipe + "not for colour: [zinc oxide]\n", None, case) == ""
    lists = {}
    for name in ("open", "said"):
        out = io.StringIO()
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(io.StringIO()):
            cli.main(["weigh", str(tmp_path / name / "studio"), "plain-lotion", "--class", "one-lotion", "--today", "2027-01-01", "--json"])
        batch = json.loads(out.getvalue())["product"]["batches"][0]["batch"]
        lists[name] = [entry["inci"] for entry in batch["ingredient lists"][0]["list"]["entries"]]
    # Oil 94 %, zinc oxide 5 %, vitamin E 1 %: a colour stands last, an ingredient by its weight.
    assert lists["open"][-1] == "Zinc Oxide"
    assert lists["said"][1] == "Zinc Oxide"
