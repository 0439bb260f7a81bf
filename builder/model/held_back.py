"""What the stops of a run hold back, asked by whoever makes a document."""

from dataclasses import dataclass

from builder.model.subject import Labels, Subject, WholeStudio, wholes_of


@dataclass(frozen=True)
class HeldBack:
    """The subjects that are held back, spread out: a recipe stands here as the classes that make it, its labels as those of each class."""

    subjects: frozenset[Subject] = frozenset()

    def holds(self, subject: Subject) -> bool:
        """Tell whether something is held back, alone or with what it is part of."""
        return any(whole in self.subjects for whole in wholes_of(subject))

    @property
    def everything(self) -> bool:
        """Tell whether nothing at all may be published."""
        return self.holds(WholeStudio())

    @property
    def only_labels(self) -> bool:
        """Tell whether all else can be published."""
        return all(isinstance(subject, Labels) for subject in self.subjects)


NOTHING_HELD = HeldBack()
