"""The batch codes of a product in words for the teacher's sheet."""

from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.pot_for import PotFor
from builder.words.say import message, say, say_count

FROM_BEFORE = message("What is taken home is of an earlier batch: write its code and the day on which it was made on the labels.")
# By whether there is one pot, and whether labels are printed.
WHERE = {
    (True, True): message("Batch code: {codes}. Write it on the pot; the labels bear it."),
    (True, False): message("Batch code: {codes}. Write it on the pot, and on what is packed."),
    (False, True): message("Batch code: {codes}. Write it on each pot; the labels bear it."),
    (False, False): message("Batch code: {codes}. Write it on each pot, and on what is packed."),
}
OF_EARLIER = message("What is taken home is of the batch {code}, which the labels bear.")


def code_words(plan: ClassPlan, made: MadeProduct, *, labelled: bool = True) -> str:
    """Return the codes with where they are written; empty where there is no date yet.

    `labelled` says whether labels are printed for it, which then bear the code.
    """
    codes = _codes(made)
    if not codes:
        return ""
    if plan.comes_from_before(made.batch.product):
        on_the_pot = say("Batch code: {codes}. Write it on the pot.", codes=codes)
        earlier = plan.date.labels if plan.date else None
        if earlier:
            return f"{on_the_pot} {say(OF_EARLIER, code=earlier.batch)}"
        return f"{on_the_pot} {say(FROM_BEFORE)}"
    return say(WHERE[len(made.pots) == 1, labelled], codes=codes)


def _codes(made: MadeProduct) -> str:
    pots = [pot for pot in made.pots if pot.purpose is not PotFor.TEACHER]
    if not pots or not pots[0].code:
        return ""
    first, last = pots[0].code, pots[-1].code
    codes = first
    if first != last:
        many = say_count("{count}\u00a0pot", "{count}\u00a0pots", len(pots))
        codes = say("{first} to {last} ({pots})", first=first, last=last, pots=many)
    for pot in made.pots:
        if pot.purpose is PotFor.TEACHER:
            codes = say("{codes}; the teacher's pot {code}", codes=codes, code=pot.code)
    return codes
