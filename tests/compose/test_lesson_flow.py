"""Steps counted in each part, and in each part its cautions, before the step they belong to."""

from dataclasses import replace

import pytest

from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.formula.hazards import cautions_for, hazards_of_recipe
from builder.compose.teaching.lesson_flow import FlowSource, Foot, compose_flow
from builder.compose.teaching.pieces import writer_of
from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowPart, LessonFlow, ProseView, StepRun
from builder.model.document import Folder
from builder.model.place import Name
from builder.model.teaching.lesson import CautionHere, Mention, Part, Step, Steps, Who
from builder.model.teaching.prose import Sentence
from builder.rules.hazard import is_of_heat
from tests.making import figures

HERE = Address(Folder.PRINT, "steps.pdf")


def step(*names: str) -> Step:
    return Step(tuple(piece for name in names for piece in ("Weigh ", Mention(Name(name)), ".")) or ("Look.",))


def part(*blocks: CautionHere | Steps) -> Part:
    return Part("A part", Who.STUDENTS, 10, blocks)


def flow_of(edition: Edition, number: int, *parts: Part) -> LessonFlow:
    sheet = edition.plans[0].made[number].batch
    return compose_flow(edition.studio, [FlowSource(each, sheet) for each in parts], writer_of(edition, HERE, "classes/first"))


def cautions(shown: FlowPart) -> list[CautionView]:
    return [block for block in shown.blocks if isinstance(block, CautionView)]


def outline(flow: LessonFlow) -> list[int | str]:
    """Return each part as a list: the numbers of steps, and the names of cautions."""
    found: list[int | str] = []
    for each in flow.parts:
        for block in each.blocks:
            if isinstance(block, StepRun):
                found += range(block.start, block.start + len(block.html))
            else:
                assert not isinstance(block, ProseView)
                found.append(block.name)
    return found


def test_a_caution_stands_before_the_first_step_of_each_part_that_names_its_ingredient(edition: Edition) -> None:
    flow = flow_of(edition, 1, part(Steps((step(), step("lye"), step("lye")))), part(Steps((step("lye"),))))
    assert outline(flow) == [1, "Lye burns", 2, 3, "Lye burns", 1]


def test_steps_bear_the_letter_of_their_part(edition: Edition) -> None:
    sheet = edition.plans[0].made[1].batch
    source = FlowSource(part(Steps((step(), step("lye"), step()))), sheet, letter="B")
    (lettered,) = compose_flow(edition.studio, [source], writer_of(edition, HERE, "classes/first")).parts
    assert [name for block in lettered.blocks if isinstance(block, StepRun) for name, _ in block.steps] == ["B1", "B2", "B3"]


def test_in_brief_says_less_only_where_the_caution_has_fewer_words(edition: Edition) -> None:
    sheet = edition.plans[0].made[1].batch
    source = FlowSource(part(Steps((step("lye"),))), sheet)
    writer = writer_of(edition, HERE, "classes/first")
    (whole,), (brief,) = (compose_flow(edition.studio, [source], writer, foot=foot).parts for foot in (Foot.EMPTY, Foot.LYE))
    assert [len(block.if_it_happens) for block in cautions(whole)] == [4]
    (said,) = [block.if_it_happens for block in cautions(brief)]
    for word in ("running water at once", "20 minutes", "poison centre"):
        assert word in " ".join(said)


def heated(words: str, *names: str) -> Part:
    return Part("A part", Who.STUDENTS, 10, (Steps((step(*names),)),), title_says=(Sentence(words),))


def test_heat_is_not_spoken_of_where_cold_things_are_weighed_before_it(edition: Edition) -> None:
    salts = "What is hot scalds"
    weighing, heating, filling = heated("Weigh", "glycerin"), heated("Heat it", "glycerin"), heated("Fill", "glycerin")
    shown = [[caution.name for caution in cautions(each)] for each in flow_of(edition, 0, weighing, heating, filling).parts]
    assert [salts in names for names in shown] == [False, True, True]
    alone = flow_of(edition, 0, weighing)  # No part says that anything is hot: it is said with the amount.
    assert salts in [caution.name for caution in cautions(alone.parts[0])]


def test_within_a_part_too_heat_is_spoken_of_before_the_step_that_heats(edition: Edition) -> None:
    hot = "What is hot scalds"
    warm = Step(("Warm it.",), sentences=(Sentence("Warm it."),))
    flow = flow_of(edition, 0, part(Steps((step("glycerin"), step("sea salt"), warm, step("glycerin")))))
    assert [name for name in outline(flow) if name == hot or isinstance(name, int)] == [1, 2, hot, 3, 4]
    (shown,) = [block for block in flow.parts[0].blocks if isinstance(block, CautionView) and block.name == hot]
    assert "20 minutes" in " ".join(shown.if_it_happens)


def places_of_hot_fat(edition: Edition, *parts: Part) -> list[list[int | str]]:
    """Return of each part, of soap from oils at 70 °C, the first numbers of its runs of steps and where hot fat is spoken of."""
    batch = edition.plans[0].made[1].batch
    (at_70,) = (phase.heat_to for phase in edition.plans[0].made[0].batch.recipe.phases if phase.heat_to)
    hot = replace(batch, recipe=replace(batch.recipe, phases=tuple(replace(one, heat_to=at_70) for one in batch.recipe.phases)))
    flow = compose_flow(edition.studio, [FlowSource(each, hot) for each in parts], writer_of(edition, HERE, "classes/first"))
    spoken = ([getattr(block, "start", getattr(block, "name", "")) for block in each.blocks] for each in flow.parts)
    return [[one for one in each if isinstance(one, int) or one == "Hot fat and wax burn and catch fire"] for each in spoken]


def said_step(words: str, *names: str) -> Step:
    return replace(step(*names), sentences=(Sentence(words),))


def test_lye_that_heats_itself_warms_no_oil_that_is_weighed_after_it(edition: Edition) -> None:
    fat = "Hot fat and wax burn and catch fire"
    lye = part(Steps((said_step("Let it cool to 70 °C.", "lye"),)))
    oils = part(Steps((said_step("Weigh it.", "olive oil"), said_step("Warm it."))))
    assert places_of_hot_fat(edition, lye, oils) == [[1], [1, fat, 2]]


@pytest.mark.parametrize(
    "first",
    [
        said_step("Melt it all in the pot."),  # Words alone have the oils hot before the lye is made.
        said_step("Warm it.", "olive oil"),
    ],
)
def test_oils_that_were_heated_before_the_lye_burn_from_the_first_step_on(edition: Edition, first: Step) -> None:
    fat = "Hot fat and wax burn and catch fire"
    lye = part(Steps((said_step("Let it cool to 70 °C.", "lye"),)))
    pouring = part(Steps((said_step("Pour it in.", "olive oil"),)))
    assert places_of_hot_fat(edition, part(Steps((first,))), lye, pouring)[2] == [fat, 1]


def test_oils_that_are_melted_beside_the_lye_burn_from_the_next_part_on(edition: Edition) -> None:
    lye = part(Steps((said_step("Stir the lye.", "lye"), said_step("Melt the oils meanwhile."))))
    pouring = part(Steps((said_step("Pour it in.", "olive oil"),)))
    assert places_of_hot_fat(edition, lye, pouring)[1] == ["Hot fat and wax burn and catch fire", 1]


def test_washing_and_putting_out_flames_heats_nothing_that_is_made() -> None:
    for words in ("Wash the jug in hot water.", "Put out every flame and hot plate.", "Use a heatproof jug.", "Keep it from heat."):
        assert not is_of_heat(Sentence(words)), words
    for words in ("Put it in hot water, and melt it.", "Turn off the hot plate.", "Pour in the hot water.", "Stir at 60 °C."):
        assert is_of_heat(Sentence(words)), words


def test_what_no_step_names_comes_before_the_first(edition: Edition) -> None:
    flow = flow_of(edition, 1, part(Steps((step(),))))
    before = [caution.name for caution in flow.before]
    assert before[:2] == ["Lye burns", "Fresh soap still burns"]
    assert [caution.signal for caution in flow.before] == sorted(
        (caution.signal for caution in flow.before), key=["danger", "warning", "caution", "notice"].index
    )


def test_a_caution_that_the_lesson_places_is_not_repeated(edition: Edition) -> None:
    flow = flow_of(edition, 1, part(CautionHere(Name("caustic")), Steps((step("lye"),)), CautionHere(Name("caustic"))))
    assert outline(flow) == ["Lye burns", 1]


def test_a_phase_that_is_heated_far_enough_is_hot(edition: Edition) -> None:
    flow = flow_of(edition, 0, part(Steps((step("sea salt"), step("glycerin")))))
    names = outline(flow)
    assert names.index("What is hot scalds") < names.index(2)
    # The phase is heated to 70 °C: what burns from there on burns there.
    for burns_from, is_hot in ((70, True), (71, False)):
        here = replace(edition.studio, constants={"hot enough to burn": figures(burns_from).in_use})
        assert ("hot" in hazards_of_recipe(here, edition.plans[0].made[0].batch)) is is_hot


def test_amounts_are_filled_in(edition: Edition) -> None:
    flow = flow_of(edition, 0, part(Steps((step("sea salt"),))))
    runs = [block.html for each in flow.parts for block in each.blocks if isinstance(block, StepRun)]
    assert runs == [('Weigh <b class="amount">406.8\u00a0g</b>.',)]


def test_the_gravest_caution_comes_first(edition: Edition) -> None:
    words = [text.signal for text in cautions_for(edition.studio, ["slippery", "caustic", "stains"])]
    assert words == ["danger", "warning", "caution"]
