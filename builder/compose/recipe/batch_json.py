"""A batch, or a class, as a JSON document with every worked number: unrounded, as weighed, with units, workings and findings.

The form is stable: `format` names it and `version` rises when a key changes its meaning or goes. A number that was worked out is an
object: `exact` is a fraction in lowest terms that loses nothing, `value` the same as a decimal of twelve significant digits. Masses are
in grams, volumes in millilitres, shares are fractions of one.
"""

from collections.abc import Iterable

from builder.compose.label.label_json import labels_json
from builder.compose.recipe.json_number import Json, number
from builder.compose.supplies.supply_json import cost_json, jug_json, strokes_json
from builder.compose.teaching.weighing_json import solutions_json, weighing_json
from builder.model.dose.dose import Lowered, MostOf
from builder.model.finding import Finding
from builder.model.formula.emulsion import Emulsion
from builder.model.label.ingredient_list import Declared, IngredientList, Question
from builder.model.lye.soap_made import SoapMade
from builder.model.recipe.column import Column, Weighed
from builder.model.recipe.filling import Filling
from builder.model.recipe.size import ContainersSize, Lost, MouldSize, OilsSize, PeopleSize, Size, TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.recipe.working import Given, Working
from builder.model.teaching.class_plan import ChoiceTotal, ClassPlan, MadeProduct

VERSION = 1


def batch_json(batch: WorkedBatch | None, findings: Iterable[Finding], recipe: str) -> Json:
    """Return the document of one batch; `batch` is null where a finding stops it."""
    return {
        "format": "stillroom batch",
        "version": VERSION,
        "recipe": recipe,
        "batch": _batch(batch) if batch else None,
        "findings": [_finding(finding) for finding in findings],
    }


def class_json(plan: ClassPlan | None, findings: Iterable[Finding], class_key: str, recipe: str) -> Json:
    """Return the document of one product of a class; `product` is null where a finding stops it."""
    made = next((made for made in plan.made if made.make.recipe.text == recipe), None) if plan else None
    return {
        "format": "stillroom class batch",
        "version": VERSION,
        "class": class_key,
        "recipe": recipe,
        "date": plan.date.on.isoformat(timespec="minutes") if plan and plan.date else None,
        "waiting": plan.date.waiting if plan and plan.date else None,
        "students": plan.students if plan else None,
        "groups": plan.groups if plan else None,
        "cost": cost_json(plan.cost) if plan and plan.cost else None,
        "product": _made(plan, made) if plan and made else None,
        "findings": [_finding(finding) for finding in findings],
    }


def _made(plan: ClassPlan, made: MadeProduct) -> Json:
    return {
        "containers": made.containers[0].in_all,
        "batches": [
            {"for": p.purpose, "copies": p.copies, "batch": _batch(p.batch), "also fills": [_filling(one) for one in p.batch.fillings[1:]]}
            for p in made.batches
        ],
        "needed in all": [{"ingredient": need.ingredient, "grams": number(need.mass.grams)} for need in made.needed],
        "choices in all": [_choice_total(total) for total in made.choices],
        "labels": labels_json(made),
        "at home": [{"size": home.size.written, "batch": _batch(home.batch)} for home in made.home],
        "jugs": [jug_json(jug) for jug in made.jugs],
        "who weighs": weighing_json(plan, made.batch.recipe.name),
        "lye solutions": solutions_json(plan, made.batch.recipe.name),
    }


def _batch(batch: WorkedBatch) -> Json:
    return {
        "name": batch.recipe.name,
        "product": batch.product.name,
        "size": {"by": type(batch.size).__name__.removesuffix("Size").casefold(), **_size(batch.size)},
        "lines": [
            {
                "ingredient": line.name,
                "phase": line.phase,
                "role": str(line.role),
                "share": number(line.share),
                "grams": number(line.exact.grams),
                "after the cook": line.after_the_cook,
                "strength": number(line.strength) if line.strength is not None else None,
            }
            for line in batch.lines
        ],
        "columns": [_column(column) for column in batch.columns],
        **_filling(batch.own),
        "ingredient lists": [{"chosen": dict(variant.chosen), "list": _ingredients(variant.ingredients)} for variant in batch.own.variants],
        "volume": number(batch.volume.millilitres) if batch.volume else None,
        "smallest sensible batch": number(batch.smallest.grams) if batch.smallest else None,
        "emulsion": _emulsion(batch.emulsion) if batch.emulsion else None,
        "what the soap becomes": _soap(batch.soap, batch.own) if batch.soap else None,
        "strokes": [strokes_json(one) for one in batch.strokes],
        "jugs": [jug_json(jug) for jug in batch.jugs],
        "cost": cost_json(batch.cost) if batch.cost else None,
        "workings": [_working(working) for working in (*batch.workings, *batch.own.workings)],
    }


def _filling(filling: Filling) -> dict[str, Json]:
    """Return what one kind of container takes, and what may be added to it."""
    portions = filling.portions
    return {
        "portions": {
            "container": filling.fill.container.text,
            "fill": number(portions.fill.grams),
            "poured": number(portions.poured.grams),
            "wanted": portions.wanted,
            "yields": portions.yields,
            "all from": number(portions.all_from.grams) if portions.all_from is not None else None,
            "left in the pot": number(portions.in_the_pot.grams),
            "left": number(portions.left.grams),
            "units in a package": filling.fill.units,
        },
        "doses": [
            {
                "of": dose.what,
                "options": list(dose.options),
                "share of a portion": number(dose.share),
                "at most, grams": number(dose.at_most.grams),
                "drops": [
                    {"option": one.option, "at most": one.drops, "measured": one.drop.measured} for one in dose.each if one.drop is not None
                ],
                "each": [_most_of(one) for one in dose.each],
                "mixed": {"grams": number(dose.mixed.weight.grams), "drops": dose.mixed.drops} if dose.mixed else None,
            }
            for dose in filling.doses
        ],
    }


def _choice_total(total: ChoiceTotal) -> Json:
    return {
        "of": total.what,
        "portions": total.portions,
        "left out": total.left_out,
        "not chosen yet": total.open,
        "options": [
            {
                "option": one.option,
                "chosen": one.chosen,
                "for those, grams": number(one.for_chosen.grams),
                "expected, grams": number(one.expected.grams),
                "if all take it, grams": number(one.worst.grams),
            }
            for one in total.options
        ],
    }


def _most_of(one: MostOf) -> Json:
    return {
        "option": one.option,
        "grams": number(one.weight.grams),
        "drops": one.drops,
        "drop": {"grams": number(one.drop.mass.grams), "measured": one.drop.measured} if one.drop else None,
        "offered": one.is_offered,
        "lowered by": _lowered(one.lowered) if one.lowered else None,
    }


def _lowered(lowered: Lowered) -> Json:
    limit = lowered.limit
    return {
        "limit": limit.ingredient,
        "for": limit.product_type,
        "at most": number(limit.most) if limit.most is not None else None,
        "percent of": str(limit.percent_of),
        "region": limit.region,
        "weight": str(limit.weight),
        "law of the studio's region": lowered.own_law,
        "proven": lowered.proven,
        "source": limit.source.key,
        "at": limit.at,
        "known": str(limit.known),
    }


def _emulsion(emulsion: Emulsion) -> Json:
    return {
        "oils": [card.name for card in emulsion.oils],
        "emulsifiers": [card.name for card in emulsion.emulsifiers],
        "share of oils": number(emulsion.oil_share),
        "share of water": number(emulsion.water_share),
        "water that is taken up": number(emulsion.takes_up),
        "share of free acids neutralised": [number(emulsion.soap.low), number(emulsion.soap.high)] if emulsion.soap else None,
        "required HLB": number(emulsion.required) if emulsion.required is not None else None,
        "HLB of the emulsifiers": number(emulsion.has) if emulsion.has is not None else None,
        "share of the first that would meet it": number(emulsion.share_of_first) if emulsion.share_of_first is not None else None,
    }


def _soap(made: SoapMade, filling: Filling) -> Json:
    return {
        "of each fat": [
            {"fat": one.ingredient.name, "soap": number(one.soap.grams), "unsaponified": number(one.unsaponified.grams)}
            for one in made.soaps
        ],
        "glycerol": number(made.glycerol.grams),
        "water": number(made.water.grams),
        "salts of acids": {one.ingredient.name: number(one.salt.grams) for one in made.salts},
        "rest of the alkali": number(made.rest_of_alkali.grams),
        "free alkali": number(made.free_alkali.grams),
        "other ingredients": {card.name: number(mass.grams) for card, mass in made.others},
        "total": number(made.total.grams),
        "bar": number(filling.fill.weight.grams),
        "bar after the cure": number(filling.cured.grams) if filling.cured else None,
    }


def _column(column: Column) -> Json:
    lye = column.lye
    return {
        "unit": column.unit,
        "weighed": [_weighed(weighed) for weighed in column.weighed],
        "total": number(column.total.grams),
        "oils": number(column.oils.grams),
        "alkali": number(column.alkali.grams),
        "lye water": number(column.lye_water.grams),
        "phases": {name: number(mass.grams) for name, mass in column.phase_totals.items()},
        "top up": [
            {
                "phase": one.phase,
                "to": number(one.weight.grams),
                "likely": number(one.lost.grams) if one.lost else None,
                "measured": one.measured or None,
            }
            for one in column.top_ups
        ],
        "lye": None
        if lye is None
        else {
            "superfat": number(lye.superfat),
            "superfat before rounding": number(lye.asked),
            "superfat at the lowest": number(lye.lowest),
            "superfat at the highest": number(lye.highest),
            "superfat before the cook": number(lye.before_the_cook) if lye.before_the_cook is not None else None,
            "superfat before the cook at the lowest": number(lye.before_the_cook_lowest)
            if lye.before_the_cook_lowest is not None
            else None,
            "goes in after the cook": list(lye.late),
            "superfat without waxes": number(lye.without_waxes) if lye.without_waxes is not None else None,
            "lye concentration": number(lye.concentration),
            "lye concentration in water": number(lye.in_water),
            "water from elsewhere": number(lye.water_beside.grams),
            "water to lye": number(lye.water_to_lye),
            "water to oils": number(lye.water_of_oils),
            "taken in the worst case": {
                "by the scales": number(lye.by_scales),
                "by ingredient": [{"ingredient": cause.ingredient, "takes": number(cause.takes)} for cause in lye.causes],
            },
            "alkalis": [
                {
                    "alkali": part.alkali,
                    "share of equivalents": number(part.by_equivalents),
                    "share of weight": number(part.by_weight),
                }
                for part in lye.parts
            ],
            "purities": [
                {
                    "alkali": purity.alkali,
                    **{end: number(share) for end, share in zip(("low", "typical", "high"), purity.hydroxide, strict=True)},
                    "bought solution": purity.strength is not None,
                    "assumed": purity.assumed,
                    "source": purity.source,
                }
                for purity in lye.purities
            ],
        },
    }


def _weighed(weighed: Weighed) -> Json:
    scale = weighed.scale
    return {
        "ingredient": weighed.line.name,
        "phase": weighed.line.phase,
        "grams": number(weighed.mass.grams),
        "reads": number(weighed.mass.grams / scale.grams_per_unit),
        "unit": scale.unit,
        "scale": scale.name,
        "division": number(scale.division.grams / scale.grams_per_unit),
        "fits": weighed.fits,
    }


def _ingredients(listed: IngredientList) -> Json:
    return {
        "entries": [_declared(entry) for entry in listed.entries],
        "open pairs": [list(pair) for pair in listed.open_pairs],
        "without a label name": list(listed.nameless),
        "figure to ask for": _question(listed.question) if listed.question else None,
        "scents without an allergen statement": list(listed.without_statement),
    }


def _question(question: Question) -> Json:
    return {"blend": question.blend, "share of": question.part or None, "settles": question.settles}


def _declared(entry: Declared) -> Json:
    return {
        "inci": entry.inci,
        "plain": entry.plain,
        "as": "allergen" if entry.is_allergen else str(entry.declared_as),
        "nano": entry.is_nano,
        "least": number(entry.least),
        "most": number(entry.most),
    }


def _working(working: Working) -> Json:
    return {
        "rule": working.rule,
        "of": working.of,
        "given": [_given(given) for given in working.given],
        "result": number(working.result),
        "unit": working.unit,
    }


def _given(given: Given) -> Json:
    return {
        "name": f"{given.name} of {given.of}" if given.of else given.name,
        "value": number(given.value),
        "unit": given.unit,
        "source": f"{given.source}, from memory" if given.from_memory else given.source,
    }


def _finding(finding: Finding) -> Json:
    place = finding.place
    return {
        "name": finding.name,
        "kind": str(finding.weight),
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "wrong": finding.wrong,
        "remedy": finding.remedy,
        "accepted": finding.accepted,
    }


def _size(size: Size) -> dict[str, Json]:
    match size:
        case TotalSize(total, lost):
            return {"total": number(total.grams), **_lost(lost)}
        case OilsSize(oils, lost):
            return {"oils": number(oils.grams), **_lost(lost)}
        case ContainersSize(containers, lost):
            return {"containers": containers, **_lost(lost)}
        case MouldSize(volume):
            return {"volume": number(volume.millilitres)}
        case PeopleSize():
            (own, containers), *others = size.counts
            also: list[Json] = [
                {"container": one.fill.container.text, "fill": number(one.fill.weight.grams), "count": count} for one, count in others
            ]
            shown, left = number(size.demo.grams), _lost(Lost(size.left_in_the_pot, size.left_in_each_cup))
            return {"containers": containers, "demo": shown, **left, "also": also, "each student": own.each_student}


def _lost(lost: Lost) -> dict[str, Json]:
    return {"left in the pot": number(lost.in_the_pot.grams), "left in each cup": number(lost.in_each_cup.grams)}
