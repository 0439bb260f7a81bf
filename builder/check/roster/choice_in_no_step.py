"""A choice of a recipe that no step of the class, or of the take-home sheet, puts in.

Students are told what they may choose and how much of it; when it goes in, only a step can say. Words count as braces do.

Decided: a lesson that names less than two of its ingredients in braces is not looked at, as in `ingredient_in_no_step.py`.
"""

import re
from collections.abc import Iterator, Sequence

from builder.check.rule import CLASS_IN_STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.recipe import Choice, Recipe
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.rules.ingredient_words import Instructions
from builder.rules.naming import ChoiceNamed, OptionNamed, Unknown, meaning_of
from builder.rules.part_recipe import followed
from builder.words.fold import fold
from builder.words.listed import listed

_ONLY_WITH_BRACES = 2
# What is chosen is called by these too; whichever of them a sentence says, it is taken to put it in.
_CALLED = (
    ("scent", "smell", "fragrance", "essential oil", "flavour", "flavor", "drop"),
    ("colour", "color", "mica", "pigment", "dye", "tint"),
)


@rule_on(
    CLASS_IN_STUDIO,
    FindingKind("choice-in-no-step", CAUTION, "No step of a lesson puts in what students choose."),
)
def find_choices_in_no_step(plan: ClassPlan, studio: Studio) -> Iterator[Finding]:
    """Compare what each recipe lets people choose with what the steps of its class, and of its take-home sheet, say of it."""
    for made in plan.made:
        recipe, lesson = made.batch.recipe, plan.studio_class.lesson
        for choice in recipe.choices:
            without = [one.where for one in followed(plan, made) if not _put_in(choice, one.parts, recipe, studio)]
            if without:
                step = f"Weigh at most {{{choice.what}}} of your {choice.what}, and stir it in."
                yield caution(
                    "choice-in-no-step",
                    recipe.at("choices"),
                    f"{recipe.name}: a {choice.what} is chosen, and no step {listed(without, 'or')} says when it goes in.",
                    f"Add a step to {lesson.place.file}, for example `{step}`",
                    about=frozenset({WholeClass(plan.studio_class.key)}),
                )


def _put_in(choice: Choice, parts: Sequence[Part], recipe: Recipe, studio: Studio) -> bool:
    """Tell whether some parts put in what is chosen, in braces or in words; or are too few to tell."""
    meant = [meaning_of(mention.name, recipe, studio) for part in parts for mention in part.mentions]
    if sum(not isinstance(one, Unknown) for one in meant) < _ONLY_WITH_BRACES:
        return True
    cards = [card for option in choice.options if option and (card := studio.ingredient(option))]
    named = any(
        (isinstance(one, ChoiceNamed) and one.what == fold(choice.what))
        or (isinstance(one, OptionNamed) and one.key in {c.key for c in cards})
        for one in meant
    )
    what = fold(choice.what)
    called = next((words for words in _CALLED if what in words), ())
    names = (fold(name).removesuffix(" essential oil").removesuffix(" oil") for card in cards for name in (card.name, *card.also_called))
    words = sorted({what, *map(fold, called), *names})
    said = re.compile(rf"\b(?:{'|'.join(map(re.escape, words))})(?:s|es|ed)?\b")
    in_words = named or any(said.search(fold(sentence.words)) for part in parts for sentence in part.sentences)
    return in_words or Instructions.of(parts).put_everything_in
