"""Lye that no part handles, and a heading that says `no raw soap` over steps that say otherwise."""

from collections.abc import Iterator

from builder.check.rule import CLASS, STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.lye_words import hazards_said
from builder.rules.part_recipe import recipe_about
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


@rule_on(
    STUDIO,
    FindingKind("raw-soap-denied", CAUTION, "A heading says that there is no raw soap, and the words of its steps bring lye or raw soap."),
)
def find_raw_soap_denied(studio: Studio) -> Iterator[Finding]:
    """Look for parts that are said to bring no raw soap, and whose words bring lye or raw soap."""
    for studio_class in studio.classes.values():
        for part in (part for part in studio_class.lesson.parts if part.no_raw_soap):
            recipe = studio.recipes.get(recipe_about(part, studio_class.recipe_keys) or "")
            said = hazards_said(part, studio.lye_words)
            if said and recipe is not None:
                hazard, place = next(iter(said.items()))
                what = "raw soap" if hazard == "raw soap" else "lye"
                yield caution(
                    "raw-soap-denied",
                    place,
                    f'The heading of "{part.title}" says `no raw soap`, and this puts {what} into the hands of students. The words count.',
                    "Leave `no raw soap` out of the heading, or let the teacher do this step in a part of its own.",
                    about=frozenset({WholeClass(studio_class.key)}),
                )
