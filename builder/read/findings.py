"""All that reading can find, each kind declared in the module that gives it."""

from builder.model.finding_kind import FindingKind
from builder.read import not_used, profiles, studios
from builder.read.dates import published_dates
from builder.read.label import languages, po_files
from builder.read.lye import acid_shares, purities
from builder.read.recipe import ingredients
from builder.read.roster import roster_files, rosters
from builder.read.shapes import card, fields, figure, label_name, labels, profile, recipe, supplies
from builder.read.supplies import things
from builder.read.teaching import blocks, cautions, lessons, pages, part_headings, pieces, teaching
from builder.read.text import pictures, tables, text_files
from builder.read.values import amounts, colours, kinds, measures, numbers, values
from builder.read.yaml import faults, placed_yaml, yaml_links, yaml_nodes, yaml_problems

_MODULES = (
    published_dates, languages, po_files, acid_shares, purities, not_used, profiles, ingredients, roster_files, rosters, card, fields,
    figure, label_name, labels, profile, recipe, supplies, studios, things, blocks, cautions, lessons, pages, part_headings,
    pieces, teaching, pictures, tables, text_files, amounts, kinds, measures, colours, numbers, values, faults, placed_yaml, yaml_links,
    yaml_nodes, yaml_problems,
)  # fmt: skip
FINDS: tuple[FindingKind, ...] = tuple(kind for module in _MODULES for kind in module.FINDS)
