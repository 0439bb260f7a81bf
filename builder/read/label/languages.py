"""A file of `content/languages/` becomes a language of labels."""

from builder.model.finding import Finding
from builder.model.label.language import Language
from builder.read.shapes.library import LanguageShape, LanguageWordsShape
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold


def read_language(placed: PlacedYaml, findings: list[Finding]) -> Language | None:
    """Read one language; None where it cannot be made."""
    shape = fit(LanguageShape, placed, findings)
    if shape is None:
        return None
    words = {str(info.alias): getattr(shape.words, field) for field, info in LanguageWordsShape.model_fields.items()}
    texts = {fold(english): text for english, text in shape.texts.items()}
    return Language(shape.name, shape.locale, words, texts)
