"""Documents of one kind for tests, by their name in the table of documents."""

import json
from dataclasses import replace
from functools import cache
from typing import Any

from builder.compose.document_table import DOCUMENTS
from builder.compose.edition import Edition
from builder.compose.on_demand import documents_on_demand
from builder.compose.recipe.batch_json import class_json
from builder.model.document import Document
from builder.model.teaching.class_plan import ClassPlan
from tests.making import sure
from tests.published import edition, shared

KINDS = {kind.name: kind for kind in DOCUMENTS}


def composed(name: str, edition: Edition, sheet: ClassPlan | None = None) -> list[Document]:
    """Make all documents of a kind, or those of one class sheet, which may be none of the edition's own."""
    seen = edition if sheet is None else replace(edition, plans=(sheet,))
    made = (KINDS[name].make(seen, subject) for subject in KINDS[name].scope.all(seen))
    return [document for document in made if document is not None]


def made_at(edition: Edition, *paths: str) -> dict[str, str]:
    """Make what an edition has at these paths below the output, and nothing else; a roster has no names in it."""
    entries = documents_on_demand(edition, edition).entries
    return {path: sure(entries[path].make()).html for path in paths}


@cache
def of_example(name: str) -> list[Document]:
    """Return all documents of a kind of the example studio, which nobody changes. The processes of one run of tests share them."""
    return shared(f"all of {name}", lambda: composed(name, edition()))


def styles(name: str) -> tuple[str, ...]:
    """Return the stylesheets of a kind of sheet."""
    return KINDS[name].all_styles


def product_json(plan: ClassPlan, recipe: str) -> dict[str, Any]:
    """Return what the JSON of one product of a class holds, as a reader of it finds it."""
    made = json.loads(json.dumps(class_json(plan, (), "first", recipe)))
    product: dict[str, Any] = made["product"]
    return product
