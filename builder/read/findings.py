"""All that reading can find, each kind declared in the module that gives it."""

from builder.model.finding_kind import FindingKind
from builder.read import not_used, profiles, studios
from builder.read.dates import published_dates
from builder.read.label import languages, po_files
from builder.read.lye import acid_shares, purities
from builder.read.recipe import ingredients
from builder.read.roster import roster_files, rosters
from builder.read.shapes import card, fields, figure, label_name, labels, profile, recipe
from builder.read.shapes import supplies as packs
from builder.read.supplies import inventory, supplies
from builder.read.teaching import blocks, cautions, lessons, pages, part_headings, pieces, teaching
from builder.read.text import pictures, tables, text_files
from builder.read.values import amounts, colours, kinds, measures, numbers, values
from builder.read.yaml import faults, placed_yaml, yaml_links, yaml_nodes, yaml_problems

FINDS: tuple[FindingKind, ...] = (
    *published_dates.FINDS,
    *languages.FINDS,
    *po_files.FINDS,
    *acid_shares.FINDS,
    *purities.FINDS,
    *not_used.FINDS,
    *profiles.FINDS,
    *ingredients.FINDS,
    *roster_files.FINDS,
    *rosters.FINDS,
    *card.FINDS,
    *fields.FINDS,
    *figure.FINDS,
    *label_name.FINDS,
    *labels.FINDS,
    *profile.FINDS,
    *recipe.FINDS,
    *packs.FINDS,
    *studios.FINDS,
    *inventory.FINDS,
    *supplies.FINDS,
    *blocks.FINDS,
    *cautions.FINDS,
    *lessons.FINDS,
    *pages.FINDS,
    *part_headings.FINDS,
    *pieces.FINDS,
    *teaching.FINDS,
    *pictures.FINDS,
    *tables.FINDS,
    *text_files.FINDS,
    *amounts.FINDS,
    *kinds.FINDS,
    *measures.FINDS,
    *colours.FINDS,
    *numbers.FINDS,
    *values.FINDS,
    *faults.FINDS,
    *placed_yaml.FINDS,
    *yaml_links.FINDS,
    *yaml_nodes.FINDS,
    *yaml_problems.FINDS,
)
