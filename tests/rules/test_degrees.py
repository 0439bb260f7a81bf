"""Temperatures as sentences name them: ranges, both scales, bounds, and what a sentence denies. 104 °F are 40 °C, 158 °F are 70 °C."""

from fractions import Fraction

import pytest

from builder.model.place import Place
from builder.model.teaching.lesson import Part, Step, Steps, Who
from builder.model.teaching.prose import Sentence, sentences_of, value_as_text
from builder.rules.degrees import Degrees, all_degrees_in, degrees_in, degrees_meant, is_bound
from builder.rules.hands.stirred_in import Named, stirred_in_hot
from tests.making import card


def sentence(text: str) -> Sentence:
    (one,) = sentences_of(value_as_text(text, Place("lesson.md", 3, 1)))
    return one


@pytest.mark.parametrize(
    ("text", "named", "meant"),
    [
        ("Heat it to 40 °C.", ["40"], ["40"]),
        ("Heat it to 70 to 75 °C.", ["70 75"], ["70 75"]),
        ("Heat it to 70-75 degrees C.", ["70 75"], ["70 75"]),
        ("Heat it to 104 °F.", ["40"], ["40"]),
        ("Heat it to 104 °F (40 °C).", ["40"], ["40"]),
        ("Heat it to 104 °F or 40 °C.", ["40"], ["40"]),
        ("Heat it from 40 °C to 70 °C.", ["40", "70"], ["40", "70"]),
        ("Heat it to 104 °F, then cool it to 30 °C.", ["40", "30"], ["40", "30"]),
        ("Do not heat it to 90 °C.", ["90"], []),
        ("If it is at 90 °C, wait.", ["90"], []),
        ("If it is at 90 °C, let it cool to 40 °C.", ["90", "40"], ["40"]),
        ("Is it at 90 °C?", ["90"], []),
        ("Heat it gently.", [], []),
        # Of more temperatures than a step ever names the first eight are read.
        (
            "Try it at " + " and ".join(f"{at} °C" for at in range(10, 20)) + ".",
            [str(at) for at in range(10, 20)],
            [str(at) for at in range(10, 18)],
        ),
    ],
)
def test_a_sentence_names_temperatures_and_means_some_of_them(text: str, named: list[str], meant: list[str]) -> None:
    def told(found: tuple[Degrees, ...]) -> list[str]:
        return [" ".join(dict.fromkeys((str(one.low), str(one.high)))) for one in found]

    one = sentence(text)
    assert told(all_degrees_in(one)) == named
    assert told(degrees_meant(one)) == meant
    first = degrees_in(one)
    assert (first is None) is (not named) and (first is None or str(first.low) == named[0].split()[0])


def test_a_temperature_stands_where_it_is_written() -> None:
    one = sentence("Stir well; heat it to 70 °C.")
    (found,) = degrees_meant(one)
    assert one.words[found.begin : found.end] == "70 °C"
    assert (found.place.line, found.place.column, found.place.width) == (3, 23, 5)


@pytest.mark.parametrize(
    ("text", "bound"),
    [
        ("Keep it below 40 °C.", True),
        ("Keep it below about 40 °C.", True),
        ("Below 40 °C it sets.", True),
        ("Heat it to no more than 40 °C.", True),
        ("It is not above 40 °C.", True),
        ("Heat it to 40 °C.", False),
        ("Below the lid it is 40 °C.", False),
    ],
)
def test_a_temperature_that_something_stays_below_is_a_bound(text: str, *, bound: bool) -> None:
    one = sentence(text)
    assert is_bound(one, all_degrees_in(one)[0]) is bound


# What goes in is judged by the degrees told before it in its sentence, else by those after it, else by those of the step before.
@pytest.mark.parametrize(
    ("steps", "celsius"),
    [
        (["Heat it to 70 °C, and stir in the powder."], "70"),
        (["Stir in the powder at 70 °C."], "70"),
        (["Heat it to 80 °C, then to 70 °C, and stir in the powder."], "70"),
        (["Stir in the powder at 70 °C and heat it to 80 °C."], "70"),
        (["Heat it to 80 °C, stir in the powder, and go on to 90 °C."], "80"),
        (["Heat it to 70 to 75 °C.", "Stir in the powder."], "70"),
        (["Heat it to 70 °C.", "Stir.", "Stir in the powder."], "70"),
        (["Heat it to 70 °C.", "Let it cool.", "Stir in the powder."], None),
        (["Heat it to 70 °C and let it cool.", "Stir in the powder."], None),
        (["Heat it to 70 °C, let it cool, and stir in the powder."], None),
        (["Let it cool, heat it to 70 °C, and stir in the powder."], "70"),
        (["Let it cool and stir in the powder."], None),
        (["Stir in the powder."], None),
        (["Heat it to 70 °C.", "Weigh the powder."], None),
        (["Heat it to 70 °C.", "Do not stir in the powder."], None),
        (["Heat it to 70 °C.", "The powder is stirred in."], "70"),
    ],
)
def test_what_goes_in_meets_the_heat_that_was_told_last(steps: list[str], celsius: str | None) -> None:
    places = [Place("lesson.md", at) for at in range(1, len(steps) + 1)]
    said = tuple(Step((), at, sentences_of(value_as_text(text, at))) for at, text in zip(places, steps, strict=True))
    part = Part("Stir", Who.TOGETHER, 10, (Steps(said),))
    found = list(stirred_in_hot(part, [Named(card("our powder"), frozenset({"powder", "our powder"}))]))
    assert [one.celsius for one in found] == ([] if celsius is None else [Fraction(celsius)])
    assert all(one.place.line == len(steps) and one.place.width == len("powder") for one in found)
