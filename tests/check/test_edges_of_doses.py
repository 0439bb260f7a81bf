"""What counts as a limit for an oil or a colour, and as a scent that is left in: rows of the tables changed one by one."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.check.dose.colour_in_acid import find_colours_in_acid
from builder.check.dose.phototoxic import find_phototoxic_oils
from builder.check.dose.scent_left_in import find_scent_left_in
from builder.model.dose.limit import Limit, names_of
from builder.model.hazard import Hazard
from builder.model.place import Name
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import Choice
from builder.reckon.dose.limits import limits_for
from tests.check.test_at_the_edge import batch, card_of, levels, mixed
from tests.check.test_seldom_met import seen_in
from tests.making import share
from tests.reckon.test_guests import STUDIO

BERGAMOT = card_of("bergamot essential oil")
ROW = next(one for one in STUDIO.limits if one.hazard is Hazard.PHOTOTOXIC and one.most and {*one.names} & {*names_of(BERGAMOT)})


# A limit for an oil that burns in the sun is a figure for that hazard, for that oil and for what stays on (IFRA Standards).
@pytest.mark.parametrize(
    ("row", "contact", "found"),
    [
        (ROW, Contact.LEAVE_ON, 0),
        (replace(ROW, hazard=None), Contact.LEAVE_ON, 1),
        (replace(ROW, names=("another oil",)), Contact.LEAVE_ON, 1),
        (replace(ROW, most=None), Contact.LEAVE_ON, 1),
        (replace(ROW, contact=(Contact.RINSE_OFF,)), Contact.LEAVE_ON, 1),
        (replace(ROW, names=("another oil",)), Contact.RINSE_OFF, 0),
    ],
)
def test_an_oil_that_burns_in_the_sun_needs_a_limit_of_its_own(row: Limit, contact: Contact, found: int) -> None:
    one = replace(batch(mixed(bergamot_essential_oil="0.3"), contact), limits=(row,))
    assert levels(find_phototoxic_oils(one)) == ["phototoxic-unlimited caution"] * found


@pytest.mark.parametrize(
    ("options", "scented", "found"),
    [
        (("lavender essential oil", None), "0.6", 1),
        (("lavender essential oil", None), "0", 0),
        (("lavender essential oil",), "0.6", 0),
        # Who leaves out a colour has not asked for a product without scent.
        (("kaolin clay", None), "0.6", 0),
    ],
)
def test_a_scent_is_left_in_where_no_scent_is_offered(options: tuple[str | None, ...], scented: str, found: int) -> None:
    choice = Choice("something", tuple(Name(one) if one else None for one in options), share("0.5"))
    of = mixed(lavender_essential_oil=scented) if scented != "0" else mixed(glycerin="3")
    assert levels(find_scent_left_in(seen_in("US", replace(of, choices=(choice,))))) == ["scent-left-in caution"] * found


# Annex IV of Regulation (EC) 1223/2009 sets some colours a most on the lips; elsewhere the most of the entry holds, if there is one.
@pytest.mark.parametrize(
    ("contact", "most", "on_lips", "limit"),
    [
        (Contact.LIPS, "6", "1", ("1", "lips")),
        (Contact.LIPS, "6", None, ("6", "cosmetics")),
        (Contact.LEAVE_ON, "6", "1", ("6", "cosmetics")),
        (Contact.LEAVE_ON, "6", "6", ("6", "cosmetics")),
        (Contact.LEAVE_ON, None, "1", None),
    ],
)
def test_the_most_of_a_colour_on_the_lips_is_for_the_lips(
    contact: Contact, most: str | None, on_lips: str | None, limit: tuple[str, str] | None
) -> None:
    mosts = [Fraction(one) / 100 if one else None for one in (most, on_lips)]
    rule = replace(STUDIO.field_rules[0], most=mosts[0], most_on_lips=mosts[1])
    region = replace(STUDIO, profile=replace(STUDIO.profile, region="EU")).region
    product = Product("a thing", "A thing", contact, False, DeclaredBy.WEIGHT)
    rules = replace(STUDIO.rules(), region=region, limits=(), colour_rules=(), field_rules=(rule,))
    found = [(one.most, one.product_type) for one in limits_for(product, rules)]
    assert found == ([(Fraction(limit[0]) / 100, limit[1])] if limit else [])


# Ultramarine gives off hydrogen sulfide with acids (its card); baking soda takes up lye as an acid does, and is none: pH 8.3 in water.
@pytest.mark.parametrize(("beside", "found"), [("citric_acid", 1), ("sodium_bicarbonate", 0), ("glycerin", 0)])
def test_ultramarine_bears_all_but_an_acid(beside: str, found: int) -> None:
    one = batch(mixed(**{"ultramarine_blue": "1", beside: "20"}), Contact.RINSE_OFF)
    assert levels(find_colours_in_acid(one)) == ["colour-in-acid caution"] * found
