"""The weighing plan of one product of a class as JSON: who weighs what for which pots, and the lye that staff make."""

from builder.compose.recipe.json_number import Json, number
from builder.model.lye.lye_solution import LyeSolution
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.weighing_plan import WeighingTask


def weighing_json(plan: ClassPlan, recipe: str) -> Json:
    """Return the weighings of one product by the name of its recipe."""
    return [_task(task) for task in plan.weighing.tasks if task.recipe == recipe]


def solutions_json(plan: ClassPlan, recipe: str) -> Json:
    """Return the lye solutions of one product by the name of its recipe."""
    return [_solution(lye) for lye in plan.weighing.solutions_of(recipe)]


def _task(task: WeighingTask) -> Json:
    return {
        "ingredient": task.ingredient,
        "for": task.purpose,
        "grams": number(task.each.grams),
        "pots": task.pots,
        "who": str(task.weigher),
        "group": task.group,
        "part": task.part.title if task.part else None,
        "found": str(task.found_as),
    }


def _solution(lye: LyeSolution) -> Json:
    return {
        "alkalis": {name: number(mass.grams) for name, mass in lye.alkalis},
        "liquids": {name: number(mass.grams) for name, mass in lye.liquids},
        "grams": number(lye.solution.grams),
        "strength": number(lye.strength),
        "times": lye.times,
        "ready-mixed": lye.ready_mixed,
        "bought": lye.bought,
        "ahead": lye.ahead,
        "bottles": [{"for": one.purpose, "bottles": one.number, "grams": number(one.each.grams)} for one in lye.bottles],
    }
