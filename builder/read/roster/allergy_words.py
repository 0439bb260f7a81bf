"""The file of words about allergies becomes rows of words."""

from builder.model.finding import Finding
from builder.model.roster.allergy import AllergyWords, Says
from builder.read.known import Known
from builder.read.shapes.allergy_words import AllergyWordsShape
from builder.read.yaml.fit import fit_each
from builder.read.yaml.placed_yaml import PlacedYaml


def read_allergy_words(placed: PlacedYaml, known: Known, findings: list[Finding]) -> dict[str, AllergyWords]:
    """Read the rows of one file."""
    return {
        key: shape.make(AllergyWords, says=shape.says or Says.AN_ALLERGEN)
        for key, shape in fit_each(AllergyWordsShape, placed, findings, known)
    }
