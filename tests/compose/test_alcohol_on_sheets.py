"""A lesson of a studio's own that sprays or wipes with alcohol: each sheet has the caution of its vapour before that step, unasked.

Vapour of isopropyl alcohol burns at room temperature (section 9 of suppliers' safety data sheets, from memory).
"""

from pathlib import Path

import pytest

from tests.compose.conftest import FILES, read_edition, write_studio
from tests.composing import composed
from tests.page_text import tree_of

VAPOUR, SPRAY = "Vapour catches fire", "alcohol until the bubbles burst"
LESSON = FILES["classes/first/lesson.md"]
STEP = "4. Fill {portion} into the jar.\n"
SPRAYED = LESSON.replace(STEP, f"{STEP}5. Spray the top with isopropyl {SPRAY}.\n")
PLACED = SPRAYED.replace("## Mix the salts (students, 40 min)\n", "## Mix the salts (students, 40 min)\n\n{caution: flammable}\n")
FORBIDDEN = LESSON.replace(STEP, f"{STEP}5. Never spray the top with alcohol.\n")
# Without the oils of scent, which bring the same caution.
SALTS = FILES["recipes/salts.yaml"].replace("from: [lavender essential oil, no scent]", "from: [no scent]")


def texts_of(folder: Path, kind: str, lesson: str) -> list[str]:
    studio = write_studio(folder, classes__first__lesson_md=lesson, recipes__salts_yaml=SALTS)
    made = composed(kind, read_edition(studio))
    return [tree_of(one.html).get_text(" ") for one in made if "Mix the salts" in one.html]


@pytest.mark.parametrize("kind", ["teacher's sheet", "steps at the bench", "take-home sheet"])
def test_the_caution_stands_before_the_step_that_sprays(kind: str, tmp_path: Path) -> None:
    texts = texts_of(tmp_path, kind, SPRAYED)
    assert texts
    for text in texts:
        steps = text[text.rindex("Mix the salts", 0, text.index(SPRAY)) :]
        assert VAPOUR in steps[: steps.index(SPRAY)]


@pytest.mark.parametrize("kind", ["teacher's sheet", "steps at the bench", "take-home sheet"])
def test_where_none_is_sprayed_nothing_is_said_of_vapour(kind: str, tmp_path: Path) -> None:
    assert not any(VAPOUR in text for lesson in (LESSON, FORBIDDEN) for text in texts_of(tmp_path, kind, lesson))


def test_a_caution_that_the_author_has_placed_is_not_said_again(tmp_path: Path) -> None:
    unasked, placed = (texts_of(tmp_path, "take-home sheet", lesson) for lesson in (SPRAYED, PLACED))
    assert [one.count(VAPOUR) for one in unasked] == [one.count(VAPOUR) for one in placed]
