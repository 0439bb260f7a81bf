"""A second look at a studio works out what has changed, and no more."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from builder.compose.label_layout import label_plans
from builder.guide import files_of
from builder.guide.making import DAY
from builder.model.remembered import forget
from builder.press.new_files import write_new_files
from builder.preview.built import build
from tests.guide.doing import text_of

PAGE = "site/classes/star-party.html"


@pytest.fixture
def planned(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Hear of which class labels are planned, as if none had been in this process."""
    forget()
    heard: list[str] = []
    plan_labels = label_plans.plan_labels

    def hearing(studio: Any, plan: Any) -> Iterator[label_plans.LabelPlan]:
        heard.append(plan.studio_class.key)
        return plan_labels(studio, plan)

    monkeypatch.setattr(label_plans, "plan_labels", hearing)
    return heard


@pytest.mark.long
def test_labels_of_what_has_not_changed_are_not_planned_again(tmp_path: Path, planned: list[str]) -> None:
    """The party has a roster, so that its sheets are made with names and without."""
    write_new_files(tmp_path, {**files_of(text_of("party")), "pages/about.md": "# About us\n\nWe are here.\n"})
    first = build(tmp_path, lambda: DAY)
    assert PAGE in first.listed.entries and planned != []
    planned.clear()
    (tmp_path / "pages" / "about.md").write_text("# About us\n\nWe are still here.\n", encoding="utf-8")
    second = build(tmp_path, lambda: DAY)
    document = second.document("site/about.html")
    assert document is not None and "We are still here." in document.html and planned == []
    lesson = tmp_path / "classes" / "star-party" / "lesson.md"
    lesson.write_text(lesson.read_text(encoding="utf-8").replace("A birthday that fizzes.", "A day that fizzes."), encoding="utf-8")
    page = build(tmp_path, lambda: DAY).document(PAGE)
    assert page is not None and "A day that fizzes." in page.html
