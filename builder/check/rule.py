"""A rule: what it has to be handed, what it can find, and the function that looks.

Decided: a rule is a function with its record beside it, and declares each name that it gives; rules are called by what they need, and
sorted findings do not depend on the order of the list. Why: a name without a declaration, or a declaration without its name, fails a
test; nothing is called by hand.
"""

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass
from datetime import date
from typing import Generic, ParamSpec

from builder.check.batches import Batch, BatchFinding
from builder.model.finding import Finding
from builder.model.finding_kind import FindingKind
from builder.model.label.label_fit import LabelFit
from builder.model.own_document import FaultyLayout
from builder.model.studio import Studio
from builder.model.subject import WholeClass, WholeRecipe
from builder.model.teaching.class_plan import ClassPlan

P = ParamSpec("P")
Found = Finding | BatchFinding
NotWorkedOut = frozenset[WholeClass | WholeRecipe]


@dataclass(frozen=True)
class Needs(Generic[P]):
    """What a rule has to be handed: `P` are the arguments of its function, `words` say what has been done by then."""

    words: str


# A recipe or class that a stop of these is about cannot be worked out.
STUDIO_UNWORKED: Needs[[Studio]] = Needs("the studio, before anything is worked out")
# What these stop is worked out all the same, so that no finding hides another.
STUDIO: Needs[[Studio]] = Needs("the studio")
STUDIO_ON_A_DAY: Needs[[Studio, date]] = Needs("the studio and the day")
BATCH: Needs[[Batch]] = Needs("one batch, worked out")
CLASS: Needs[[ClassPlan]] = Needs("one date of a class, worked out")
CLASS_IN_STUDIO: Needs[[ClassPlan, Studio]] = Needs("one date of a class, worked out, and the studio")
ALL_CLASSES: Needs[[tuple[ClassPlan, ...], Studio]] = Needs("all dates of all classes, worked out, and the studio")
LABELS: Needs[[tuple[LabelFit, ...]]] = Needs("how the labels fit")
LAYOUTS: Needs[[tuple[FaultyLayout, ...]]] = Needs("what is wrong with the studio's own documents and templates")
FINDINGS: Needs[[tuple[Finding, ...], Studio, NotWorkedOut, Collection[str]]] = Needs(
    "what all other rules have found, and all names of findings"
)


@dataclass(frozen=True)
class Rule(Generic[P]):
    """A function that looks for findings, with what it needs and all that it can find."""

    needs: Needs[P]
    finds: tuple[FindingKind, ...]
    look: Callable[P, Iterable[Found]]

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> Iterable[Found]:
        """Look, and give what is found."""
        return self.look(*args, **kwargs)


def rule_on(needs: Needs[P], *finds: FindingKind) -> Callable[[Callable[P, Iterable[Found]]], Rule[P]]:
    """Make a rule of a function, by what it needs and all that it can find."""
    return lambda look: Rule(needs, finds, look)
