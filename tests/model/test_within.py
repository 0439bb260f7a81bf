"""Names inside sentences keep the capitals of proper names and abbreviations."""

import pytest

from builder.words.within import within


@pytest.mark.parametrize(
    ("name", "inside"),
    [
        ("Dead Sea salt", "Dead Sea salt"),
        ("West Indian bay essential oil", "West Indian bay essential oil"),
        ("Epsom salt", "Epsom salt"),
        ("German chamomile essential oil", "German chamomile essential oil"),
        ("Vitamin E", "vitamin E"),
        ("Disodium EDTA", "disodium EDTA"),
        ("PEG-100 stearate", "PEG-100 stearate"),
        ("D-panthenol", "D-panthenol"),
        ("Olive oil", "olive oil"),
        ("Sea salt", "sea salt"),
        ("no scent", "no scent"),
        ("", ""),
    ],
)
def test_a_name_inside_a_sentence(name: str, inside: str) -> None:
    assert within(name) == inside
