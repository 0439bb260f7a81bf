"""The class file names a format, and the parts of the lesson come to another."""

from collections.abc import Iterator

from builder.check.rule import CLASS, rule_on
from builder.model.dates.studio_class import Format
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan

_MEANS = {
    Format.DEMO: "only the teacher makes something in class",
    Format.HANDS_ON: "only students make something in class, alone or together with the teacher",
    Format.DEMO_WITH_HANDS_ON_PARTS: "the teacher makes something in class, and students make something too",
}


@rule_on(CLASS, FindingKind("format-differs", CAUTION, "The class is called by one format, and its parts come to another."))
def find_formats_that_differ(plan: ClassPlan) -> Iterator[Finding]:
    """Compare the format that is claimed with the one that the parts come to."""
    studio_class, worked_out = plan.studio_class, plan.format
    if studio_class.format is not worked_out:
        yield caution(
            "format-differs",
            studio_class.at("format"),
            f'The class is called "{studio_class.format}", and its parts come to "{worked_out}": {_MEANS[worked_out]}. '
            "Pages and sheets say what the parts say.",
            f'Write "format: {worked_out}", or change who does which part in lesson.md.',
            about=frozenset({WholeClass(studio_class.key)}),
        )
