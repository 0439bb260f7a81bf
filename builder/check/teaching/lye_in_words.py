"""Lye that no part handles, lye that no step makes at home, and a heading that says `no raw soap` over steps that say otherwise."""

import re
from collections.abc import Iterator

from builder.check.rule import CLASS, CLASS_IN_STUDIO, STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.hazard import Hazard
from builder.model.label.language import OWN
from builder.model.recipe.column import Role
from builder.model.studio import Studio
from builder.model.subject import HomeSheet, WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.hands.named_amounts import weighed_as
from builder.rules.lye_words import hazards_said
from builder.rules.part_recipe import home_parts, parts_with_recipes
from builder.words.fold import fold
from builder.words.listed import listed


@rule_on(CLASS, FindingKind("lye-handled-by-nobody", STOP, "No part of the lesson handles the lye, so that no rule on lye can hold."))
def find_lye_that_nobody_handles(plan: ClassPlan) -> Iterator[Finding]:
    """Look for the lye of each recipe in the hands of somebody: by an amount in braces, or by the words of a part."""
    for one in plan.made:
        recipe = one.batch.recipe
        if recipe.lye and not one.taught.lye_by and plan.studio_class.lesson.parts:
            names = listed(f'"{alkali.name}"' for alkali in recipe.lye.alkalis)
            yield stop(
                "lye-handled-by-nobody",
                plan.studio_class.lesson.place,
                f"No part of this lesson handles the lye of {recipe.name} ({names}), so nobody knows in whose hands it is, and no rule "
                "on lye can hold.",
                f"Write the step that weighs or pours it, with {{{recipe.lye.alkalis[0].name}}} in braces, into the part of those who do "
                "it.",
                about=frozenset({WholeClass(plan.studio_class.key)}),
            )


# What a sentence has to say, beside a word for the alkali, to make lye out of it.
_MADE = re.compile(r"\b(?:dissol\w+|mak(?:e|ing)|mix\w*|prepar\w+|weigh\w*|water|ice|milk)\b", re.IGNORECASE)


@rule_on(
    CLASS_IN_STUDIO,
    FindingKind("lye-not-made-at-home", STOP, "A take-home sheet has lye in its table, and no step of it makes that lye."),
)
def find_lye_that_nobody_makes_at_home(plan: ClassPlan, studio: Studio) -> Iterator[Finding]:
    """Look in the parts that are done at home for a step that weighs or dissolves the alkali.

    A sheet without amounts is passed over, and so is a lesson in another language, whose words nobody reads here.
    """
    for one in plan.made:
        recipe = one.batch.recipe
        parts = home_parts(plan.studio_class, recipe.key)
        # Lye that nobody handles in class is a stop of its own.
        for home in one.home if recipe.lye and one.taught.lye_by and studio.profile.language == OWN else ():
            named = weighed_as(studio, home.batch, (mention for part in parts for mention in part.mentions))
            alkalis = [w.line.ingredient for w in home.batch.grams.weighed if w.line.role is Role.ALKALI]
            called = re.compile("|".join(map(re.escape, ("lye", *(fold(name) for a in alkalis for name in (a.name, *a.also_called))))))
            in_words = (fold(sentence.words) for part in parts for sentence in part.sentences)
            if not named or any(w.line.role is Role.ALKALI for w in named) or any(called.search(s) and _MADE.search(s) for s in in_words):
                continue
            yield stop(
                "lye-not-made-at-home",
                parts[0].place,
                f"{recipe.name}: the take-home sheet lists {listed([fold(a.name) for a in alkalis])} and water, and none of its steps "
                "makes lye of them. Whoever is alone with the sheet has to guess how, and lye burns.",
                f'Add a part such as "## Make the lye at home (students, 30 min, home only)" with {{lye water}} and '
                f"{{{fold(alkalis[0].name)}}} in its steps; `stillroom guide soap-lab` shows one.",
                about=frozenset({HomeSheet(plan.studio_class.key, one.make.recipe.text, home.size.written)}),
            )


@rule_on(
    STUDIO,
    FindingKind("raw-soap-denied", CAUTION, "A heading says that there is no raw soap, and the words of its steps bring lye or raw soap."),
)
def find_raw_soap_denied(studio: Studio) -> Iterator[Finding]:
    """Look for parts that are said to bring no raw soap, and whose words bring lye or raw soap."""
    for studio_class, part, _ in parts_with_recipes(studio):
        said = hazards_said(part, studio.lye_words) if part.no_raw_soap else {}
        if said:
            hazard, place = next(iter(said.items()))
            what = "raw soap" if hazard == Hazard.RAW_SOAP else "lye"
            yield caution(
                "raw-soap-denied",
                place,
                f'The heading of "{part.title}" says `no raw soap`, and this puts {what} into the hands of students. The words count.',
                "Leave `no raw soap` out of the heading, or let the teacher do this step in a part of its own.",
                about=frozenset({WholeClass(studio_class.key)}),
            )
