"""Model to findings: one rule, one file. The rules are two plain lists, in order."""

from collections.abc import Callable, Iterable, Iterator

from builder.check.acceptance import accept_findings
from builder.check.alkali_among_ingredients import find_alkalis_among_ingredients
from builder.check.amount_for_scale import find_amounts_scales_cannot_weigh
from builder.check.amounts_of_another_kind import find_amounts_of_another_kind
from builder.check.batches import Batch, BatchFinding, batches_of, say_once
from builder.check.colour_not_allowed import find_colours_not_allowed
from builder.check.dates_out_of_order import find_dates_out_of_order
from builder.check.doses_high import find_high_doses
from builder.check.figures_missing import find_figures_missing
from builder.check.fill_and_container import find_fills_that_do_not_fit
from builder.check.format_differs import find_formats_that_differ
from builder.check.home_size_without_oils import find_home_sizes_without_oils
from builder.check.label_order import find_open_label_orders
from builder.check.letters_not_in_font import find_letters_not_in_font
from builder.check.links_broken import find_broken_links
from builder.check.lye_liquids import find_unfit_lye_liquids
from builder.check.lye_too_much import find_too_much_lye
from builder.check.lye_too_strong import find_too_strong_lye
from builder.check.lye_where_it_belongs import find_lye_out_of_place
from builder.check.mention_unknown import find_unknown_mentions
from builder.check.names_twice import find_names_twice
from builder.check.over_limit import find_amounts_over_limits
from builder.check.portions_short import find_short_portions
from builder.check.preservation import find_products_that_do_not_keep
from builder.check.reach import classes_held_back
from builder.check.scales_missing import find_scales_missing
from builder.check.shares_not_whole import find_shares_not_whole
from builder.check.superfat_out_of_range import find_superfat_out_of_range
from builder.check.supervision import find_supervision_wanting
from builder.check.time_does_not_fit import find_times_that_do_not_fit
from builder.check.unknown_ingredient import find_unknown_ingredients
from builder.check.unknown_recipe import find_unknown_recipes
from builder.model.class_sheet import ClassSheet
from builder.model.finding import Finding
from builder.model.studio import Studio

__all__ = ["accept_findings", "check_batch", "check_sheets", "check_studio", "classes_held_back"]

RULES_ON_STUDIO: tuple[Callable[[Studio], Iterator[Finding]], ...] = (
    find_scales_missing,
    find_unknown_ingredients,
    find_unknown_recipes,
    find_fills_that_do_not_fit,
    find_amounts_of_another_kind,
    find_shares_not_whole,
    find_lye_out_of_place,
    find_unfit_lye_liquids,
    find_alkalis_among_ingredients,
    find_superfat_out_of_range,
    find_figures_missing,
    find_high_doses,
    find_home_sizes_without_oils,
    find_products_that_do_not_keep,
    find_unknown_mentions,
    find_broken_links,
    find_times_that_do_not_fit,
    find_dates_out_of_order,
    find_names_twice,
    find_letters_not_in_font,
)

RULES_ON_SHEETS: tuple[Callable[[ClassSheet], Iterator[Finding]], ...] = (
    find_formats_that_differ,
    find_supervision_wanting,
)

RULES_ON_BATCHES: tuple[Callable[[Batch], Iterator[BatchFinding]], ...] = (
    find_too_much_lye,
    find_too_strong_lye,
    find_amounts_scales_cannot_weigh,
    find_short_portions,
    find_open_label_orders,
    find_amounts_over_limits,
    find_colours_not_allowed,
)


def check_studio(studio: Studio) -> list[Finding]:
    """Run every rule that needs no batch."""
    return [finding for rule in RULES_ON_STUDIO for finding in rule(studio)]


def check_batch(batch: Batch) -> list[Finding]:
    """Run every rule on one batch; what holds for several columns alike is said once."""
    return say_once(_found([batch]))


def check_sheets(sheets: Iterable[ClassSheet], studio: Studio) -> list[Finding]:
    """Run every rule on every class and its batches; what holds for several batches or dates of a class alike is said once."""
    sheets = tuple(sheets)
    of_sheets = dict.fromkeys((finding, finding.place) for sheet in sheets for rule in RULES_ON_SHEETS for finding in rule(sheet))
    of_batches = say_once(_found(batch for sheet in sheets for batch in batches_of(sheet, studio)))
    return [finding for finding, _ in of_sheets] + of_batches


def _found(batches: Iterable[Batch]) -> Iterator[BatchFinding]:
    for batch in batches:
        for rule in RULES_ON_BATCHES:
            yield from rule(batch)
