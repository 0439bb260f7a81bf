"""What `stillroom list` can list."""

from enum import StrEnum


class ListName(StrEnum):
    """A list, by the word that follows the command."""

    KINDS = "kinds"
    CONTAINERS = "containers"
    INGREDIENTS = "ingredients"
    OILS = "oils"
    SHEETS = "sheets"
    CAUTIONS = "cautions"
    PASSAGES = "passages"
    DRAWINGS = "drawings"
    RECIPES = "recipes"
    CLASSES = "classes"
    FINDINGS = "findings"
    TERMS = "terms"
    FIGURES = "figures"
    LAYOUTS = "layouts"
    TOKENS = "tokens"
