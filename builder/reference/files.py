"""Every file whose keys have a shape: those of a studio, and those that ship and that a studio draws on."""

from dataclasses import dataclass
from fnmatch import fnmatch

from builder.read.shapes.card import CardShape
from builder.read.shapes.figure import FigureShape
from builder.read.shapes.labels import LabelSheetShape
from builder.read.shapes.library import (
    CautionShape,
    ContainerShape,
    NamedPhShape,
    OwnProductShape,
    PassageHeadShape,
    ProductShape,
    RegionShape,
    SourceShape,
)
from builder.read.shapes.profile import ProfileShape
from builder.read.shapes.prose_tables import AllergyWordsShape, ClaimShape, FlameWordsShape, LyeWordsShape, UnsafeStepShape
from builder.read.shapes.recipe import RecipeShape
from builder.read.shapes.shape import Shape
from builder.read.shapes.studio_class import ClassShape
from builder.read.shapes.supplies import (
    ContainerInventoryShape,
    ContainerPackShape,
    IngredientInventoryShape,
    IngredientPackShape,
    ItemInventoryShape,
    ItemPackShape,
)
from builder.read.shapes.teaching import DrawingShape, FormatAdviceShape, ToolDrawingShape, WatchRuleShape

ONE, LISTED, BY_NAME = "", "a list; each item has the keys of one of these kinds", "names of your own, each with these keys"


@dataclass(frozen=True)
class StudioFile:
    """A file by its `path` (NAME stands for a name of the studio's own), what it is for, how its keys are `arranged`, and their shapes."""

    key: str
    path: str
    about: str
    arranged: str
    shapes: tuple[type[Shape], ...]

    def is_at(self, path: str) -> bool:
        """Tell whether a path is that of this file."""
        return fnmatch(path, self.path.replace("NAME", "*"))


STUDIO_FILES = (
    StudioFile("studio.yaml", "studio.yaml", "Who you are, whose rules hold, your paper and your scales.", ONE, (ProfileShape,)),
    StudioFile("recipe.yaml", "recipes/NAME.yaml", "One recipe.", ONE, (RecipeShape,)),
    StudioFile("class.yaml", "classes/NAME/class.yaml", "One class: for whom, what is made, when.", ONE, (ClassShape,)),
    StudioFile(
        "inventory.yaml",
        "inventory.yaml",
        "What is there, and when it was counted.",
        LISTED,
        (IngredientInventoryShape, ContainerInventoryShape, ItemInventoryShape),
    ),
    StudioFile(
        "supplies.yaml",
        "shelf/supplies.yaml",
        "What you buy, by the pack, with prices.",
        LISTED,
        (IngredientPackShape, ContainerPackShape, ItemPackShape),
    ),
    StudioFile("card.yaml", "shelf/ingredients/NAME.yaml", "One ingredient: your own, or yours in place of ours.", ONE, (CardShape,)),
    StudioFile("sources.yaml", "shelf/sources.yaml", "What your figures rest on: suppliers, certificates, books.", BY_NAME, (SourceShape,)),
    StudioFile("containers.yaml", "shelf/containers.yaml", "Bottles, jars, tins and moulds.", BY_NAME, (ContainerShape,)),
    StudioFile("products.yaml", "shelf/products.yaml", "Kinds of product that we do not have.", BY_NAME, (OwnProductShape,)),
    StudioFile("label_sheets.yaml", "shelf/label_sheets.yaml", "Sheets of labels that we do not have.", BY_NAME, (LabelSheetShape,)),
    StudioFile(
        "caution.yaml", "shelf/cautions/NAME.yaml", "One caution: your own, or what you say otherwise in one of ours.", ONE, (CautionShape,)
    ),
    StudioFile("passage.md", "shelf/passages/NAME.md", "The lines between hyphens above a passage.", ONE, (PassageHeadShape,)),
    StudioFile(
        "allergy_words.yaml", "shelf/allergy_words.yaml", "What people write of allergies and what it means.", BY_NAME, (AllergyWordsShape,)
    ),
)

# They have no counterpart on a studio's shelf, and are described for whoever adds to them.
SHIPPED_FILES = (
    StudioFile("constants.yaml", "content/constants.yaml", "Figures that belong to no ingredient.", BY_NAME, (FigureShape,)),
    StudioFile("our_products.yaml", "content/products.yaml", "The kinds of product that ship.", BY_NAME, (ProductShape,)),
    StudioFile("usual_ph.yaml", "content/usual_ph.yaml", "The pH of products that are none of those kinds.", BY_NAME, (NamedPhShape,)),
    StudioFile(
        "regions.yaml",
        "content/regions.yaml",
        "The regions, and what the law of each asks.",
        BY_NAME,
        (RegionShape,),
    ),
    StudioFile("supervision.yaml", "content/supervision.yaml", "The rules on watching people at work.", BY_NAME, (WatchRuleShape,)),
    StudioFile("drawings.yaml", "content/drawings.yaml", "Drawings that a lesson can call for.", BY_NAME, (DrawingShape,)),
    StudioFile("tools.yaml", "content/tools.yaml", "Small drawings of tools.", BY_NAME, (ToolDrawingShape,)),
    StudioFile("format_advice.yaml", "content/format_advice.yaml", "Advice on formats.", BY_NAME, (FormatAdviceShape,)),
    StudioFile("unsafe_steps.yaml", "content/tables/unsafe_steps.yaml", "Dangerous words.", BY_NAME, (UnsafeStepShape,)),
    StudioFile("claims.yaml", "content/tables/claims.yaml", "Claims that a cosmetic may not make.", BY_NAME, (ClaimShape,)),
    StudioFile("lye_words.yaml", "content/tables/lye_words.yaml", "Words that mean work with lye.", BY_NAME, (LyeWordsShape,)),
    StudioFile("flame_words.yaml", "content/tables/flame_words.yaml", "Words that mean fire in the room.", BY_NAME, (FlameWordsShape,)),
)
