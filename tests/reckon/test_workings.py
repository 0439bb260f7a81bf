"""The workings of a lye, word for word: what a person finds on paper and can redo with a pocket calculator.

`workings/NAME.txt` holds what is expected, one working a line. Each was redone by hand once: the note at its head says how. To write them
anew after a change: `python -m tests.reckon.test_workings`, then redo the sums in the diff.
"""

from collections.abc import Callable, Mapping
from fractions import Fraction
from pathlib import Path

import pytest

from builder.model.place import Name
from builder.model.recipe.figure import Known
from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.recipe import DividedBy, LyeLiquid, LyePlan, WaterBy
from builder.model.recipe.size import OilsSize
from builder.model.recipe.worked_batch import WorkedBatch
from tests.making import KOH, NAOH, Number, card, cards, fat, grams, lye, scale, share, soap, sure, worked

BAR = Product("cold-process soap", "Soap", Contact.RINSE_OFF, True, DeclaredBy.WEIGHT)
FOLDER = Path(__file__).parent / "workings"


def alkali(name: str, molar: Fraction, low: int, high: Number) -> Ingredient:
    return card(name, CountsAs.ALKALI, molar_mass=molar, purity=(low, high))


def sheet(
    plan: LyePlan, *extra_cards: Ingredient, extra: Mapping[str, int] | None = None, oils: None = None, size: int = 500
) -> WorkedBatch:
    stock = cards(fat("olive oil", 185, 196), fat("coconut oil", 248, 265), *extra_cards)
    stock |= {
        "sodium hydroxide": alkali("sodium hydroxide", NAOH, 97, 99),
        "potassium hydroxide": alkali("potassium hydroxide", KOH, 88, 92),
    }
    made = soap(oils or {"olive oil": 70, "coconut oil": 30}, plan, extra)
    return worked(made, BAR, OilsSize(grams(size)), stock, [scale("0.1")])


CASES: dict[str, Callable[[], WorkedBatch]] = {
    "acid": lambda: sheet(
        lye(superfat=6), card("lactic acid", CountsAs.ACID, molar_mass="90.078", protons=1, purity=(88, 92)), extra={"lactic acid": 2}
    ),
    "two-alkalis": lambda: sheet(
        lye({"potassium hydroxide": 60, "sodium hydroxide": 40}, superfat=3, water=(WaterBy.RATIO, 3), divided_by=DividedBy.WEIGHT)
    ),
    "ready-mixed": lambda: sheet(
        lye(superfat=5, ready_mixed=share("48.5"), water=(WaterBy.PERCENT_OF_OILS, "0.36"), liquids=two_liquids()),
        card("goat milk", CountsAs.LIQUID, water_content=87),
    ),
}


def two_liquids() -> tuple[LyeLiquid, LyeLiquid]:
    return (LyeLiquid(Name("water"), Fraction(1)), LyeLiquid(Name("goat milk"), Fraction("0.3"), later=True))


def written(one: WorkedBatch) -> str:
    """Write the workings of a lye, its result and what it becomes, one a line."""
    lines = []
    for working in one.workings:
        given = "; ".join(
            " ".join(part for part in (g.name, shown(g.value), g.unit, f"<{g.source}>" if g.source else "") if part) for g in working.given
        )
        lines.append(f"{working.rule} | {working.of} | {given} | {shown(working.result)} {working.unit}".rstrip())
    lye_result = one.grams.lye
    for name in ("superfat", "lowest", "highest", "concentration", "in_water", "water_to_lye", "water_of_oils", "by_scales"):
        lines.append(f"{name} {shown(getattr(lye_result, name))}")
    lines += [f"cause {cause.ingredient} {shown(cause.takes)}" for cause in sure(lye_result).causes]
    lines += [f"part {part.alkali} {shown(part.by_equivalents)} {shown(part.by_weight)}" for part in sure(lye_result).parts]
    lines += [
        f"purity {p.alkali} {shown(p.low)} {shown(p.typical)} {shown(p.high)} {p.assumed} <{p.source}>" for p in sure(lye_result).purities
    ]
    made = one.soap
    lines += [f"soap {part.ingredient.name} {shown(part.soap.grams)} {shown(part.unsaponified.grams)}" for part in sure(made).soaps]
    lines += [f"{name} {shown(getattr(made, name).grams)}" for name in ("glycerol", "water", "rest_of_alkali", "free_alkali", "total")]
    lines.append(f"bar {shown(one.own.fill.weight.grams)}")
    lines += [f"salts {one.ingredient.name} {shown(one.salt.grams)}" for one in sure(made).salts]
    lines += [f"others {card.name} {shown(mass.grams)}" for card, mass in sure(made).others]
    return "\n".join(lines) + "\n"


def shown(value: Fraction) -> str:
    return f"{float(value):.6g}"


@pytest.mark.parametrize("name", CASES)
def test_workings(name: str) -> None:
    expected = (FOLDER / f"{name}.txt").read_text(encoding="utf-8")
    assert written(CASES[name]()) == "".join(line for line in expected.splitlines(keepends=True) if not line.startswith("#"))


def test_a_figure_of_the_stock_is_an_assumption_and_a_certificate_is_not() -> None:
    from dataclasses import replace

    from builder.reckon.lye.lye import purity_of
    from tests.making import figures

    plan = lye()
    assumed = alkali("sodium hydroxide", NAOH, 97, 99)
    certified = replace(assumed, figures={"purity": replace(figures(98), in_use=replace(figures(98).in_use, known=Known.SUPPLIER))})
    measured = replace(assumed, figures={"purity": replace(figures(98), in_use=replace(figures(98).in_use, known=Known.MEASURED))})
    assert [purity_of(one, plan.alkalis[0]).assumed for one in (assumed, certified, measured)] == [True, False, False]
    stated = purity_of(assumed, lye(purity=96).alkalis[0])
    assert (stated.low, stated.typical, stated.high, stated.source, stated.assumed) == (Fraction("0.96"),) * 3 + ("", False)
    above = purity_of(alkali("sodium hydroxide", NAOH, 95, "100.5"), plan.alkalis[0])
    assert (above.low, above.typical, above.high) == (Fraction("0.95"), Fraction("0.975"), Fraction(1))


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for case, make in CASES.items():
        file = FOLDER / f"{case}.txt"
        notes = [line for line in file.read_text(encoding="utf-8").splitlines() if line.startswith("#")] if file.exists() else []
        file.write_text("".join(f"{note}\n" for note in notes) + written(make()), encoding="utf-8")
