"""The file of words about allergies becomes rows of words."""

from builder.model.finding import Finding
from builder.model.roster.allergy import AllergyWords
from builder.read.known import Known
from builder.read.shapes.allergy_words import AllergyWordsShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import each_made


def read_allergy_words(placed: PlacedData, known: Known, findings: list[Finding]) -> dict[str, AllergyWords]:
    """Read the rows of one file."""
    return each_made(AllergyWordsShape, placed, findings, known)
