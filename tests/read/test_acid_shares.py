"""The strength of an acid in the order of a label and in limits: its share of what is weighed, and the rest its water."""

from fractions import Fraction

import pytest

from builder.read.lye.acid_shares import acid_share
from builder.read.text.text_error import TextError

EIGHTY = (Fraction(80), Fraction(80))


def test_the_acid_beside_its_water_has_its_purity_as_its_share() -> None:
    assert acid_share(("Lactic Acid", "Aqua"), {}, (Fraction(88), Fraction(92))) == {0: (Fraction(88, 100), Fraction(92, 100))}
    assert acid_share(("Aqua", "Citric Acid"), {}, (Fraction(10), Fraction(10))) == {1: (Fraction(1, 10), Fraction(1, 10))}


def test_an_assay_above_the_whole_is_the_whole() -> None:
    assert acid_share(("Lactic Acid", "Aqua"), {}, (Fraction("99.5"), Fraction("100.5"))) == {0: (Fraction(199, 200), Fraction(1))}


def test_what_is_stated_comes_first_and_among_several_parts_nothing_is_guessed() -> None:
    assert acid_share(("Acetum",), {0: (Fraction(1), Fraction(1))}, (Fraction(4), Fraction(6))) == {}
    assert acid_share(("Aqua", "Glycolic Acid", "Ammonium Glycolate"), {}, EIGHTY) == {}


def test_a_dry_acid_is_named_alone_and_a_solution_is_not() -> None:
    assert acid_share(("Citric Acid",), {}, (Fraction("99.5"), Fraction("100.5"))) == {}
    assert acid_share(("Acetum",), {}, (Fraction(4), Fraction(6))) == {}
    with pytest.raises(TextError) as error:
        acid_share(("Lactic Acid",), {}, EIGHTY)
    assert error.value.name == "label-rest-unnamed"
