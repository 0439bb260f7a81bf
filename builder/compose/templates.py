"""The template library: it refuses any name that it does not know, and escapes every text that is not already HTML."""

from collections.abc import Sequence
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined


class Templates:
    """The templates of a run. Of two with one name the first folder's counts, so that a studio can put its own in place of ours."""

    def __init__(self, layout_folders: Sequence[Path]) -> None:
        """Look for templates in these folders, in this order."""
        self._environment = Environment(
            loader=FileSystemLoader(list(layout_folders), encoding="utf-8"),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
        )

    def render(self, name: str, view: object) -> str:
        """Fill in one template; it sees its view under the name `view`, and nothing else."""
        return self._environment.get_template(name).render(view=view)
