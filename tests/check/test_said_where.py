"""As what each text of a class is said: a title, a text, or a thing to have at hand."""

from dataclasses import replace

from builder.check.teaching.statements import Said, statements_of
from tests.reckon.test_guests import LOTION, STUDIO


def test_each_text_of_a_class_is_said_as_what_it_is() -> None:
    texts = replace(LOTION, title="First words", summary="Second words", for_whom="Third words", take_home="Fourth words")
    one = replace(
        texts, wear=("Fifth words",), on_each_bench=("Sixth words",), at_the_sink=("Seventh words",), on_the_demo_table=("Last words",)
    )
    here = replace(STUDIO, classes={"one": one}, recipes={}, pages={})
    said = {statement.sentence.words: statement.said for statement in statements_of(here)}
    assert said["First words"] is Said.TITLE
    assert {said[text] for text in ("Second words", "Third words", "Fourth words")} == {Said.TEXT}
    assert {said[text] for text in ("Fifth words", "Sixth words", "Seventh words", "Last words")} == {Said.TOOL}
