"""Labels of one date share sheets: those of products whose labels are of one size lie on the same ones, in the order of the roster.

Decided: all that one student takes home lies side by side, then what the next one does; spare ones come last. Why: a sheet is handed along
the bench, and a sheet that two products fill is one sheet less.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import inf

from builder.compose.label_layout.label_layout import LaidOut, LaidPosition
from builder.compose.label_layout.label_plans import LabelPlan
from builder.model.label.label_sheet import LabelSheet
from builder.model.teaching.jar import Jar


@dataclass(frozen=True)
class OneLabel:
    """One label of a plan that has been laid out: the jar that bears it, its positions, and those of its back on a sheet of its own."""

    plan: LabelPlan
    laid_out: LaidOut
    jar: Jar
    positions: tuple[LaidPosition, ...]
    behind: tuple[LaidPosition, ...] = ()


def on_shared_sheets(plans: Iterable[LabelPlan]) -> list[tuple[OneLabel, ...]]:
    """Return for each kind of sheet the labels that lie on it, in the order in which they lie; what has not been laid out is left out."""
    shared: dict[tuple[LabelSheet, LabelSheet | None], list[OneLabel]] = {}
    for plan in plans:
        laid = plan.laid_out
        if laid is not None:
            of_one_size = (_bare(laid.sheet), _bare(laid.back.sheet) if laid.back else None)
            behind = laid.back.labels if laid.back else ((),) * len(plan.jars)
            labels = (OneLabel(plan, laid, *one) for one in zip(plan.jars, laid.labels, behind, strict=True))
            shared.setdefault(of_one_size, []).extend(labels)
    return [tuple(sorted(labels, key=lambda one: one.jar.student or inf)) for labels in shared.values()]


def _bare(sheet: LabelSheet) -> LabelSheet:
    """Return a sheet without its name: by its dimensions alone."""
    return replace(sheet, name="")
