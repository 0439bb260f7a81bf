"""How sheets read: the formulas on sentences whose scores are published, syllables by a dictionary, and the report on sheets.

Published scores (the article "Flesch-Kincaid readability tests" of Wikipedia, from memory): "The cat sat on the mat." has a reading ease of
116; "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature." has 24 syllables, and so grade 11.3. Syllables:
the divisions of Merriam-Webster's dictionary, from memory.
"""

import contextlib
import io
from pathlib import Path

import pytest

from builder import cli
from builder.compose.for_staff.reading_report import Explained, reading_lines
from builder.compose.for_staff.sheet_text import said_on
from builder.words.reading import reading_of, sentences_of, syllables_of, words_of
from tests.test_findings import lay_out

CAT = "The cat sat on the mat."
PLATYPUS = "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."
SYLLABLES = """
1: soap stirred weighs scale poured lye jug cool ounce wipes washed dried gloves oil boil used whole home change tried tea cream
2: water needed goggles minutes table lotion melted places because people science quiet gently little bottles closes advice doing fluid
2: create caution special friction require quickly useful statement notice handle olive stainless measure pressure changes dishes boxes
2: heated
3: serious hydroxide sodium recipe area vinegar medical solution idea essential coconut lavender container carefully
3: stearic beautiful platypus
4: potassium temperature ingredients thermometer reliable preservative usually evaporate
5: emulsifier polypropylene
6: saponification
"""
WORDS = [
    (word.partition(":")[0], int(word.partition(":")[2] or line[0])) for line in SYLLABLES.split("\n") if line for word in line[2:].split()
]
TRACE = Explained("trace", (), "thick enough that a drip stays on top")


def test_the_published_scores() -> None:
    cat, platypus = reading_of([CAT]), reading_of([PLATYPUS])
    assert (cat.words, cat.syllables, round(cat.ease)) == (6, 6, 116)
    assert (platypus.words, platypus.syllables, round(platypus.grade, 1)) == (13, 24, 11.3)


def test_syllables_are_those_of_a_dictionary() -> None:
    assert [(word, count, syllables_of(word)) for word, count in WORDS if syllables_of(word) != count] == []
    assert syllables_of("water-bath") == 3 and syllables_of("children's") == 2


def test_words_and_sentences() -> None:
    assert words_of("Weigh 40.5 g of water at 104 °F.") == ["Weigh", "g", "of", "water", "at", "F"]
    assert sentences_of("Heat it to 40.5 °C. Stir! Is it clear? Then stop.") == [
        "Heat it to 40.5 °C.",
        "Stir!",
        "Is it clear?",
        "Then stop.",
    ]


def sheet(*steps: str, caution: str = "") -> str:
    told = f'<div class="caution is-danger"><p class="signal">DANGER Hot</p><p>{caution}</p></div>' if caution else ""
    items = "".join(f'<li><span class="tick"></span> <b class="step">A{n}</b> {step}</li>' for n, step in enumerate(steps, 1))
    return f'<h2>A heading that is left out</h2><p>And so is this.</p>{told}<ol class="steps">{items}</ol><table><td>40 g</td></table>'


def test_steps_and_cautions_are_read_and_nothing_else() -> None:
    said = said_on(sheet('Weigh <b class="amount">30.0 g</b> (1.060 oz) of oil', "Stir<br>well. Wait.", caution="Fat burns."))
    assert [(one.at, one.text, one.is_step) for one in said] == [
        ("the caution before A1", "Fat burns.", False),
        ("A1", "Weigh of oil.", True),
        ("A2", "Stir well.", True),
        ("A2", "Wait.", True),
    ]


def test_steps_without_stops_are_no_long_sentence() -> None:
    steps = ("Put on goggles", "Weigh the water into the jug", "Set the scale to zero", "Stir until it is clear")
    apart, joined = (reading_of([one.text for one in said_on(sheet(*each))]) for each in (steps, (" ".join(steps),)))
    assert apart.sentences == 4 and joined.sentences == 1 and joined.grade - apart.grade > 5


def test_the_report_names_what_to_mend_and_where() -> None:
    long = "Lay a cloth in a wide pan, and pour in water to a third of the height of the jug that will stand in it."
    lines = list(reading_lines(sheet(CAT, long, "Stir to trace."), [TRACE], {}, in_english=True))
    assert lines[1] == "too short for a grade: under 100 words"
    assert lines[2] == f'longest sentence: 25 words, in A2: "{long}"'
    assert lines[3:] == [
        "longest step: 25 words, in A2",
        "not explained where it first stands, in A3: trace (thick enough that a drip stays on top)",
    ]
    whole = list(reading_lines(sheet(*[CAT] * 20, "Stir to trace (thick enough that a drip stays on top)."), [TRACE], {}, in_english=True))
    assert whole[1].startswith("grade -") and "without the words of the trade" in whole[1] and len(whole) == 4


def test_a_grade_is_given_twice_and_the_words_of_the_trade_weigh_in_one_only() -> None:
    soap = Explained("saponification", (), "fat turns into soap")
    (graded,) = (
        line for line in reading_lines(sheet(*["Wait for saponification to end."] * 30), [soap], {}, in_english=True) if "grade" in line
    )
    with_them, without = graded.split("(")[0].split()[1], graded.split("(")[1].split()[0]
    assert float(with_them) > 8 > 2 > float(without) and "above 8: shorten its sentences" in graded


def test_another_language_has_lengths_alone() -> None:
    lines = list(reading_lines(sheet(*["Versez l'eau dans le pot, puis remuez."] * 30), [TRACE], {}, in_english=False))
    assert lines[1] == "no grade: its formula is for English alone" and len(lines) == 4 and "7.0 to a sentence" in lines[0]


def test_the_command_says_it_of_each_sheet_and_twice_alike(tmp_path: Path) -> None:
    lay_out(None, tmp_path / "studio")
    said = []
    for _ in range(2):
        out, err = io.StringIO(), io.StringIO()
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            assert cli.main(["check", str(tmp_path / "studio"), "--today", "2027-01-01", "--reading"]) == 0
        said.append(out.getvalue())
        assert err.getvalue() == ""
    assert said[0] == said[1] and "take-home-" in said[0] and "teacher.pdf" in said[0] and "longest sentence: " in said[0]
    assert "Flesch and Kincaid" in said[0] and "knows nothing of sense" in said[0]
    assert [path.name for path in tmp_path.iterdir()] == ["studio"] and not (tmp_path / "studio" / "output").exists()


@pytest.mark.parametrize("folder", ["site_example/classes", "content/passages", "content/starters"])
def test_no_step_that_ships_has_a_sentence_of_more_than_20_words(folder: str) -> None:
    from builder.compose.for_staff.reading_report import IN_A_STEP
    from tests.lesson_steps import steps_in

    root = Path(__file__).parents[2] / folder
    long = [(place, one) for place, step in steps_in(root) for one in sentences_of(step) if len(words_of(one)) > IN_A_STEP]
    assert long == []
