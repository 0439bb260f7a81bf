"""A step of a lesson that orders more than people hold in mind.

Decided: more than four different actions, and not more than two, which is what standards ask for: those `check --reading` names. Why:
"pour, stir and cover" is done in one breath, and a finding on it would be met in most lessons.
"""

from collections.abc import Iterator

from builder.check.batches import unite
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.rules.hands.actions import actions_in, may_be_over
from builder.words.listed import listed

_MOST = 4


@rule_on(STUDIO, FindingKind("step-overloaded", CAUTION, "A step orders so much at once that hands forget half of it."))
def find_overloaded_steps(studio: Studio) -> Iterator[Finding]:
    """Count the different actions of each step; what several classes say in one passage is one finding."""
    yield from unite(
        caution(
            "step-overloaded",
            step.place,
            f"This step orders {len(verbs)} things: {listed(verbs)}. Who looks up from the pot finds no place in it again, and one tick "
            "stands for all (one action to a step, two where nothing parts them: IEC/IEEE 82079-1, from memory).",
            "Make a step of each of them, or of two that are done in one breath.",
            about=frozenset({WholeClass(studio_class.key)}),
        )
        for studio_class in studio.classes.values()
        for part in studio_class.lesson.parts
        for step in part.steps
        if may_be_over(step.sentences, _MOST)
        for verbs in [tuple(dict.fromkeys(actions_in(step.sentences)))]
        if len(verbs) > _MOST
    )
