"""What a class page says of safety in short: under who works with what, the home last, and each hazard once."""

from builder.compose.site.safety import view_safety
from builder.compose.views.site.safety import RiskGroup
from builder.rules.hazard import hazards_of_card
from tests.published import edition


def safety_of(key: str) -> tuple[RiskGroup, ...]:
    plan = next(plan for studio_class, plan in edition().classes if studio_class.key == key)
    return view_safety(edition().studio, plan)


def test_each_hazard_stands_once_under_who_works_with_it() -> None:
    for studio_class, plan in edition().classes:
        groups = view_safety(edition().studio, plan)
        names = [risk.name for group in groups for risk in group.risks]
        assert names and len(names) == len(set(names)), studio_class.key
        assert len({group.heading for group in groups}) == len(groups), studio_class.key
        assert all(group.risks for group in groups)


def test_lye_is_first_and_its_heading_says_who_handles_it() -> None:
    watched, in_pairs = safety_of("first-cold-process-bar"), safety_of("soap-lab-in-pairs")
    assert watched[0].heading == "Only the teacher handles lye and fresh soap"
    assert [risk.name for risk in watched[0].risks] == ["Lye burns", "Fresh soap still burns"]
    assert [group.heading for group in in_pairs] == [
        "The lye is mixed before you come, and nobody handles it dry",
        "You work with fresh soap yourself, in goggles and gloves",
        "What you work with yourself",
    ]


def test_flames_are_for_home_where_nothing_is_heated() -> None:
    *_, others, home = safety_of("salts-and-scrub-party")
    assert (others.heading, [risk.name for risk in others.risks]) == (
        "Also in this class",
        ["Neat preservative irritates", "Oil makes the bath slippery"],
    )
    assert (home.heading, [risk.name for risk in home.risks]) == ("With what you take home", ["Vapour catches fire", "It can poison pets"])


def test_milk_spoils_in_a_lotion_and_in_liquid_soap_and_not_in_a_bar() -> None:
    # Common practice, no source: bars of soap made with lye hold no preservative and want none.
    milk = edition().studio.ingredients["goat milk"]
    batches = {made.batch.recipe.key: made.batch for _, plan in edition().classes for made in plan.made}
    spoils = {
        key: "spoils" in hazards_of_card(milk, batches[key]) for key in ("kitchen-garden-bar", "meadow-lotion", "pump-side-hand-soap")
    }
    assert spoils == {"kitchen-garden-bar": False, "meadow-lotion": True, "pump-side-hand-soap": True}
