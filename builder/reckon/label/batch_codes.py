"""Batch codes: the letters of the product, the day as six figures, and the pot where there are several.

`ML-270306` is the lotion of 6 March 2027; `ML-270306-2` that of the second group (or student), `ML-270306-T` the teacher's. Where the
product is made twice on one day, also by two classes, a letter after the day tells them apart, in their order: `ML-270306B`. No I and no
O, which are taken for 1 and 0.
"""

from datetime import datetime

from builder.model.recipe.recipe import CODE_LETTERS
from builder.model.studio import Studio

TEACHER = "T"


def batch_code(studio: Studio, class_key: str, on: datetime, recipe: str, pot: str) -> str:
    """Return the code of one pot of a recipe that a class makes at a time; `pot` is empty where there is but one."""
    making = studio.classes_by_recipe.get(recipe, ())
    same_day = [(at.on, one.key) for one in making for at in one.dates_held if at.on.date() == on.date()]
    if (on, class_key) not in same_day:
        same_day.append((on, class_key))
    number = sorted(same_day).index((on, class_key))
    run = CODE_LETTERS[number % len(CODE_LETTERS)] if len(same_day) > 1 else ""
    code = f"{studio.recipes[recipe].letters}-{on:%y%m%d}{run}"
    return f"{code}-{pot}" if pot else code
