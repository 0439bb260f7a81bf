"""What the stops of a run hold back, asked by whoever makes a document."""

from dataclasses import dataclass

from builder.model.subject import HomeSheet, Labels, OneDate, ShoppingList, Subject, TextPage, WholeClass, WholeRecipe, WholeStudio


@dataclass(frozen=True)
class HeldBack:
    """The subjects that are held back, spread out: a recipe stands here as the classes that make it, its labels as those of each class."""

    subjects: frozenset[Subject] = frozenset()

    @property
    def everything(self) -> bool:
        """Say whether nothing at all may be published."""
        return WholeStudio() in self.subjects

    @property
    def only_labels(self) -> bool:
        """Say whether all else can be published."""
        return all(isinstance(subject, Labels) for subject in self.subjects)

    def holds(self, subject: Subject) -> bool:
        """Say whether something is held back, alone or with what it is part of."""
        match subject:
            case OneDate(key) | HomeSheet(key) | Labels(class_key=key) if self.holds_class(key):
                return True
        return self.everything or subject in self.subjects

    def holds_class(self, key: str) -> bool:
        """Say whether a class is held back as a whole."""
        return self.everything or WholeClass(key) in self.subjects

    def holds_recipe(self, key: str) -> bool:
        """Say whether a recipe is held back, and with it all that makes it."""
        return self.everything or WholeRecipe(key) in self.subjects

    def holds_page(self, key: str) -> bool:
        """Say whether a page of text is held back."""
        return self.everything or TextPage(key) in self.subjects

    @property
    def shopping(self) -> bool:
        """Say whether the shopping list is held back."""
        return self.everything or ShoppingList() in self.subjects


NOTHING_HELD = HeldBack()
