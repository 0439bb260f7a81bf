"""What a studio's supplies add to the JSON of a batch or a class: costs, jugs, strokes. Money is in the studio's currency, exact."""

from builder.compose.recipe.json_number import Json, number
from builder.model.supplies.cost import Cost, Jug, Need, PumpStrokes
from builder.model.supplies.supply import SupplyKind


def cost_json(cost: Cost) -> Json:
    """Return what the materials cost, by kind, and the packs to buy."""
    return {
        "needs": [_need(need) for need in cost.needs],
        "ingredients": number(cost.of(SupplyKind.INGREDIENT)),
        "choices at most": number(cost.choices),
        "containers": number(cost.of(SupplyKind.CONTAINER)),
        "used up": number(cost.of(SupplyKind.ITEM)),
        "total": number(cost.total),
        "each student": number(cost.each_student) if cost.each_student is not None else None,
        "each container": [{"of": each.recipe, "price": number(each.value)} for each in cost.containers],
        "at the till": number(cost.till),
        "no price known": list(cost.unpriced),
    }


def _need(need: Need) -> Json:
    bought = need.purchase
    return {
        "kind": str(need.kind),
        "name": need.name,
        "unit": "g" if need.kind is SupplyKind.INGREDIENT else "",
        "used": number(need.used),
        "if chosen": number(need.if_chosen),
        "packs": [{"pack": pack.supply.written, "number": pack.number} for pack in bought.packs] if bought else [],
        "price": number(bought.price) if bought else None,
        "left": number(bought.left) if bought else None,
        "left, price": number(need.left_value) if bought else None,
        "all combinations tried": bought.proven if bought else None,
    }


def jug_json(jug: Jug) -> Json:
    """Return what one pack of a base serves."""
    return {
        "ingredient": jug.ingredient,
        "pack": jug.supply.written,
        "grams": number(jug.holds.grams),
        "students": jug.students,
        "containers": jug.containers,
        "packs for this": jug.number,
        "left": number(jug.left.grams),
        "left, share of one": number(jug.left_share),
        "strokes": jug.strokes,
    }


def strokes_json(one: PumpStrokes) -> Json:
    """Return the strokes of a pump for what a batch takes of its ingredient."""
    return {
        "ingredient": one.ingredient,
        "strokes": number(one.strokes),
        "grams": number(one.weigh.grams),
        "measured": one.measured,
    }
