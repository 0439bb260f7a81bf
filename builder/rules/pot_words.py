"""What documents and findings call a pot and its batch by whose it is: the one table of these words."""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.teaching.pot_for import PotFor
from builder.words.say import message


@dataclass(frozen=True)
class PotWords:
    """How the batch is headed, how it stands behind its recipe, who weighs it, who does so together, and what a pot without number is."""

    title: str
    beside_recipe: str
    who: str
    together: str = message("together, once for all")
    alone: str = message("The teacher's pot")


POT_WORDS: Mapping[PotFor, PotWords] = {
    PotFor.CLASS: PotWords(message("One batch for the class"), "{recipe}", message("the class"), alone=message("The pot of the class")),
    PotFor.GROUP: PotWords(
        message("One batch for each group"),
        message("{recipe}, for each group"),
        message("each group"),
        message("each group, with the teacher"),
    ),
    PotFor.STUDENT: PotWords(
        message("One batch for each student"),
        message("{recipe}, for each student"),
        message("each student"),
        message("each student, with the teacher"),
    ),
    PotFor.TEACHER: PotWords(
        message("The teacher's batch, for spare containers and to show"), message("{recipe}, the teacher's own"), message("the teacher")
    ),
}
