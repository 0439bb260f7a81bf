"""All rules, by topic. Who adds a rule adds it here, and nowhere else."""

from collections.abc import Generator, Iterator, Sequence
from typing import Any, cast

from builder.check.acceptance import find_needless_acceptances, find_unclear_reasons
from builder.check.dates.dates_announced import find_announcements_amiss
from builder.check.dates.dates_changed import find_unclear_changes
from builder.check.dates.dates_out_of_order import find_dates_out_of_order
from builder.check.dates.dates_people import find_people_to_tell
from builder.check.dates.dates_published import find_dates_that_differ
from builder.check.dates.hours import find_hours_that_clocks_do_not_show_once
from builder.check.dates.telephone import find_numbers_that_cannot_be_dialled
from builder.check.dose.base_overloaded import find_overloaded_bases
from builder.check.dose.colour_fields import find_colours_out_of_their_field
from builder.check.dose.colour_in_acid import find_colours_in_acid
from builder.check.dose.colour_not_allowed import find_colours_not_allowed
from builder.check.dose.colour_or_not import find_colours_or_not
from builder.check.dose.colour_unknown_here import find_colours_unknown_here
from builder.check.dose.doses_high import find_high_doses
from builder.check.dose.option_not_offered import find_options_not_offered
from builder.check.dose.option_twice import find_options_twice
from builder.check.dose.over_limit import find_amounts_over_limits
from builder.check.dose.phototoxic import find_phototoxic_oils
from builder.check.dose.scent_left_in import find_scent_left_in
from builder.check.dose.scent_without_limit import find_scents_without_limit
from builder.check.formula.acid_left_over import find_acid_left_over
from builder.check.formula.acids_on_skin import find_acids_on_the_skin
from builder.check.formula.alkali_on_skin import find_alkali_on_the_skin
from builder.check.formula.charges_opposed import find_opposed_charges
from builder.check.formula.dust_unsaid import find_dust_unsaid
from builder.check.formula.emulsion import find_weak_emulsions
from builder.check.formula.fire_unsaid import find_fire_unsaid
from builder.check.formula.fizz_and_water import find_fizz_and_water
from builder.check.formula.heat import find_what_is_heated_too_far
from builder.check.formula.oil_on_bath import find_oil_on_the_bath
from builder.check.formula.ph_by_kind import find_ph_out_of_place
from builder.check.formula.plants import find_plants_out_of_place
from builder.check.formula.stirred_in_hot import find_what_is_stirred_in_too_hot
from builder.check.formula.too_rough import find_grains_too_rough
from builder.check.keeping.after_opening_missing import find_times_after_opening_missing
from builder.check.keeping.keeping import find_what_does_not_keep
from builder.check.keeping.keeps_missing import find_keeps_missing
from builder.check.keeping.preservation import find_products_that_do_not_keep
from builder.check.keeping.preservative_amount import find_preservative_amounts
from builder.check.keeping.preservative_fit import find_preservatives_that_do_not_fit
from builder.check.keeping.preservative_ph import find_preservatives_out_of_their_ph
from builder.check.label.allergens_not_stated import find_allergens_not_stated
from builder.check.label.batch_codes_alike import find_batch_codes_alike
from builder.check.label.claims import find_claims
from builder.check.label.contents_by_weight import find_contents_by_weight
from builder.check.label.earlier_batch import find_earlier_batches_amiss, find_earlier_weights_amiss
from builder.check.label.free_from import find_broken_promises
from builder.check.label.label_name_small import find_fronts_without_fields, find_names_too_small
from builder.check.label.label_order import find_open_label_orders
from builder.check.label.label_over_container import find_labels_over_containers
from builder.check.label.label_sheets import find_first_labels_off_the_sheet, find_unfit_label_sheets
from builder.check.label.label_too_small import find_labels_too_small, find_type_heights_unknown
from builder.check.label.label_unsaid import find_what_labels_leave_unsaid
from builder.check.label.label_untranslated import find_labels_untranslated
from builder.check.label.letters_not_in_font import find_letters_not_in_font
from builder.check.label.responsible_person import find_responsible_persons_outside
from builder.check.label.units_left_over import find_units_left_over
from builder.check.layouts import find_faulty_layouts
from builder.check.links_broken import find_broken_links
from builder.check.look import find_look_amiss
from builder.check.lye.acid_strength import find_acids_of_unknown_strength
from builder.check.lye.alkali_among_ingredients import find_alkalis_among_ingredients
from builder.check.lye.alkali_purity import find_purities_of_solutions
from builder.check.lye.fats_for_the_lye import find_lye_without_fat
from builder.check.lye.lye_by_weight import find_lye_weights_out_of_place
from builder.check.lye.lye_during_the_cook import find_lye_left_during_the_cook
from builder.check.lye.lye_liquids import find_unfit_lye_liquids
from builder.check.lye.lye_rounding import find_superfat_moved_by_rounding
from builder.check.lye.lye_too_much import find_too_much_lye
from builder.check.lye.lye_too_strong import find_too_strong_lye
from builder.check.lye.lye_where_it_belongs import find_lye_out_of_place
from builder.check.lye.saponification_far_off import find_saponification_far_off
from builder.check.lye.soap_additions import find_too_much_in_soap, find_what_disturbs_lye
from builder.check.lye.superfat_as_answer import find_unusual_superfat
from builder.check.lye.superfat_out_of_range import find_superfat_out_of_range
from builder.check.prose_not_judged import find_prose_not_judged
from builder.check.recipe.alkali_unusual import find_unusual_alkali
from builder.check.recipe.amount_for_scale import find_amounts_scales_cannot_weigh
from builder.check.recipe.amounts_of_another_kind import find_amounts_of_another_kind
from builder.check.recipe.figures_missing import find_figures_missing
from builder.check.recipe.fill_and_container import find_fills_that_do_not_fit
from builder.check.recipe.home_size_twice import find_home_sizes_twice
from builder.check.recipe.home_size_without_oils import find_home_sizes_without_oils
from builder.check.recipe.kind_unlike import find_kinds_unlike
from builder.check.recipe.names_twice import find_names_twice
from builder.check.recipe.portions_short import find_short_portions
from builder.check.recipe.shares_not_whole import find_shares_not_whole
from builder.check.recipe.unknown_ingredient import find_unknown_ingredients
from builder.check.recipe.unknown_recipe import find_unknown_recipes
from builder.check.roster.allergies import find_allergies_met
from builder.check.roster.choice_in_no_step import find_choices_in_no_step
from builder.check.roster.own_names import find_own_names_not_printed
from builder.check.roster.roster_choices import find_roster_choices_unknown
from builder.check.roster.roster_people import find_roster_people_out_of_place
from builder.check.roster.roster_short import find_rosters_too_short
from builder.check.rule import Found, Needs, P, Rule
from builder.check.supplies.caution_hides_step import find_steps_in_cautions
from builder.check.supplies.caution_texts import find_weakened_cautions
from builder.check.supplies.inventory_counted_ahead import find_counts_ahead
from builder.check.supplies.inventory_twice import find_inventory_twice
from builder.check.supplies.inventory_unknown import find_unknown_inventory
from builder.check.supplies.inventory_weight_unknown import find_inventory_without_weight
from builder.check.supplies.item_use_unclear import find_unclear_uses
from builder.check.supplies.price_below_materials import find_prices_below_materials
from builder.check.supplies.supply_twice import find_supplies_twice
from builder.check.supplies.supply_unknown import find_unknown_supplies
from builder.check.supplies.supply_weight_unknown import find_supplies_without_weight
from builder.check.teaching.amounts_typed import find_amounts_typed
from builder.check.teaching.flame_near_vapour import find_flames_near_vapour
from builder.check.teaching.format_differs import find_formats_that_differ
from builder.check.teaching.ingredient_in_no_step import find_ingredients_in_no_step
from builder.check.teaching.lesson_heat import find_heat_that_cannot_be
from builder.check.teaching.lye_in_words import find_lye_that_nobody_handles, find_lye_that_nobody_makes_at_home, find_raw_soap_denied
from builder.check.teaching.lye_named import find_lye_mistaken
from builder.check.teaching.mention_unknown import find_unknown_mentions
from builder.check.teaching.staff_missing import find_staff_missing
from builder.check.teaching.step_overloaded import find_overloaded_steps
from builder.check.teaching.supervision import find_supervision_wanting
from builder.check.teaching.time_does_not_fit import find_times_that_do_not_fit
from builder.check.teaching.typed_facts import find_typed_facts_that_differ
from builder.check.teaching.unsafe_steps import find_unsafe_steps
from builder.check.teaching.who_weighs import find_weighing_unsettled
from builder.model.recipe.unread import as_far_as_read

RULES: tuple[Rule[Any], ...] = (
    # recipe
    find_unknown_ingredients,
    find_unknown_recipes,
    find_kinds_unlike,
    find_fills_that_do_not_fit,
    find_amounts_of_another_kind,
    find_shares_not_whole,
    find_figures_missing,
    find_home_sizes_without_oils,
    find_home_sizes_twice,
    find_names_twice,
    find_amounts_scales_cannot_weigh,
    find_short_portions,
    # lye
    find_lye_out_of_place,
    find_unfit_lye_liquids,
    find_lye_without_fat,
    find_lye_weights_out_of_place,
    find_alkalis_among_ingredients,
    find_unusual_alkali,
    find_purities_of_solutions,
    find_saponification_far_off,
    find_superfat_out_of_range,
    find_what_disturbs_lye,
    find_too_much_lye,
    find_lye_left_during_the_cook,
    find_unusual_superfat,
    find_superfat_moved_by_rounding,
    find_too_strong_lye,
    find_acids_of_unknown_strength,
    find_too_much_in_soap,
    # dose
    find_high_doses,
    find_options_twice,
    find_scent_left_in,
    find_amounts_over_limits,
    find_options_not_offered,
    find_colours_not_allowed,
    find_colours_out_of_their_field,
    find_colours_unknown_here,
    find_colours_in_acid,
    find_colours_or_not,
    find_phototoxic_oils,
    find_scents_without_limit,
    find_overloaded_bases,
    # formula
    find_ph_out_of_place,
    find_opposed_charges,
    find_plants_out_of_place,
    find_oil_on_the_bath,
    find_fizz_and_water,
    find_what_is_heated_too_far,
    find_what_is_stirred_in_too_hot,
    find_grains_too_rough,
    find_dust_unsaid,
    find_fire_unsaid,
    find_weak_emulsions,
    find_acid_left_over,
    find_acids_on_the_skin,
    find_alkali_on_the_skin,
    # keeping
    find_products_that_do_not_keep,
    find_what_does_not_keep,
    find_preservatives_out_of_their_ph,
    find_preservatives_that_do_not_fit,
    find_times_after_opening_missing,
    find_keeps_missing,
    find_preservative_amounts,
    # label
    find_what_labels_leave_unsaid,
    find_broken_promises,
    find_claims,
    find_unfit_label_sheets,
    find_units_left_over,
    find_batch_codes_alike,
    find_contents_by_weight,
    find_responsible_persons_outside,
    find_type_heights_unknown,
    find_letters_not_in_font,
    find_open_label_orders,
    find_allergens_not_stated,
    find_labels_over_containers,
    find_first_labels_off_the_sheet,
    find_labels_too_small,
    find_earlier_batches_amiss,
    find_earlier_weights_amiss,
    find_names_too_small,
    find_fronts_without_fields,
    find_labels_untranslated,
    # teaching
    find_unknown_mentions,
    find_unsafe_steps,
    find_flames_near_vapour,
    find_raw_soap_denied,
    find_prose_not_judged,
    find_broken_links,
    find_times_that_do_not_fit,
    find_formats_that_differ,
    find_staff_missing,
    find_heat_that_cannot_be,
    find_typed_facts_that_differ,
    find_supervision_wanting,
    find_weighing_unsettled,
    find_lye_mistaken,
    find_lye_that_nobody_handles,
    find_lye_that_nobody_makes_at_home,
    find_ingredients_in_no_step,
    find_amounts_typed,
    find_overloaded_steps,
    # dates
    find_dates_out_of_order,
    find_unclear_changes,
    find_announcements_amiss,
    find_dates_that_differ,
    find_hours_that_clocks_do_not_show_once,
    find_numbers_that_cannot_be_dialled,
    find_people_to_tell,
    # roster
    find_choices_in_no_step,
    find_roster_choices_unknown,
    find_own_names_not_printed,
    find_roster_people_out_of_place,
    find_rosters_too_short,
    find_allergies_met,
    # supplies
    find_weakened_cautions,
    find_steps_in_cautions,
    find_look_amiss,
    find_unknown_supplies,
    find_supplies_twice,
    find_supplies_without_weight,
    find_unclear_uses,
    find_unknown_inventory,
    find_inventory_twice,
    find_inventory_without_weight,
    find_counts_ahead,
    find_prices_below_materials,
    # the studio's own documents and templates
    find_faulty_layouts,
    # what the studio accepts
    find_unclear_reasons,
    find_needless_acceptances,
)


def run(needs: Needs[P], *args: P.args, **kwargs: P.kwargs) -> Iterator[Found]:
    """Run every rule that needs just this, in the order of the list."""
    for rule in RULES:
        if rule.needs is needs:
            yield from cast("Rule[P]", rule)(*args, **kwargs)


def run_apart(needs: Needs[P], together: tuple[Any, ...], apart: Sequence[tuple[Any, ...]]) -> Iterator[Found]:
    """Run every rule that needs just this on all that is read in part; one that asks for what is not read, on each by itself too."""
    for rule in RULES:
        if rule.needs is needs and not (yield from _as_far_as_read(rule, together)) and len(apart) > 1:
            for one in apart:
                yield from _as_far_as_read(rule, one)


def _as_far_as_read(rule: Rule[Any], handed: tuple[Any, ...]) -> Generator[Found, None, bool]:
    """Yield what a rule finds until it asks for what is not read; return whether it never does."""
    with as_far_as_read():
        yield from rule(*handed)
        return True
    return False
