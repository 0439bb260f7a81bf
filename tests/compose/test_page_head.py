"""The head of a page onto which a part runs: two lines of sheets for staff hold 160 letters; at home the cautions stand there."""

import pytest

from builder.compose.formula.page_head import AT_HOME, IN_CLASS, IN_LARGE_PRINT, at_the_head

GOES_ON = "A Melt and pour goes on."
WARNS = [
    ("WARNING", "What is hot scalds"),
    ("WARNING", "Dust harms lungs and eyes"),
    ("WARNING", "Vapour catches fire"),
    ("DANGER", "Lye burns"),
    ("WARNING", "Neat scent oils burn and poison"),
    ("CAUTION", "Colour stains"),
]


def test_what_fits_is_said_whole() -> None:
    assert at_the_head(GOES_ON, WARNS[:2], IN_CLASS) == f"{GOES_ON} WARNING What is hot scalds. Dust harms lungs and eyes."
    assert at_the_head(GOES_ON, [], IN_CLASS) == at_the_head(GOES_ON, WARNS, AT_HOME) == GOES_ON


@pytest.mark.parametrize("most", [110, IN_CLASS])
def test_what_does_not_fit_is_counted_and_a_danger_never_is(most: int) -> None:
    said = at_the_head(GOES_ON, WARNS, most).replace("\u00a0", " ")
    assert "DANGER Lye burns." in said and said.endswith("more cautions belong to it.") and len(said) <= most
    names = sum(f"{name}." in said for _, name in WARNS)
    assert f" {len(WARNS) - names} more cautions" in said and names >= 1


def test_a_danger_says_in_short_what_to_do_where_there_is_room() -> None:
    short = {"Lye burns": "Goggles and gloves on; pour slowly.", "Fresh soap still burns": "Goggles and gloves on."}
    both = [("DANGER", name) for name in short]
    one_in_short = f"{GOES_ON} DANGER Lye burns. Goggles and gloves on; pour slowly. Fresh soap still burns."
    assert at_the_head(GOES_ON, both, 110, short) == one_in_short
    assert at_the_head(GOES_ON, both, IN_LARGE_PRINT, short) == f"{one_in_short} Goggles and gloves on."
