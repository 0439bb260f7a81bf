"""What a batch of soap becomes, in words: soap of each fat, glycerol, water, what stays fat. The parts add to the batch."""

from builder.compose.dates.length_words import length_words
from builder.compose.recipe.wording import NBSP, number, within
from builder.compose.views.teacher import Fact
from builder.model.recipe.quantity import Mass, sum_masses
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import say


def soap_facts(batch: WorkedBatch) -> tuple[Fact, ...]:
    """Return what comes out of the pot, to the gram; nothing where no soap is made."""
    made = batch.soap
    if made is None:
        return ()
    rows = [(say("Soap of {fat}", fat=within(one.ingredient.name)), one.soap) for one in made.soaps]
    rows += [
        (say("Fat that stays fat"), sum_masses(one.unsaponified for one in made.soaps)),
        (say("Glycerol, set free"), made.glycerol),
        (say("Water, before it dries"), made.water),
    ]
    rows += [(say("What becomes of {name}", name=within(one.ingredient.name)), one.salt) for one in made.salts]
    rows += [(say("Beside hydroxide in the lye as bought"), made.rest_of_alkali)]
    rows += [(say("{name}, as it went in", name=say(card.name)), mass) for card, mass in made.others]
    facts = [Fact(name, _grams(mass)) for name, mass in rows if mass]
    facts.append(Fact(say("Together, the weight of the batch"), _grams(made.total)))
    if batch.own.cured is not None and batch.recipe.cure is not None:
        bar, cured = _grams(batch.own.fill.weight), _grams(batch.own.cured)
        facts.append(
            Fact(
                say("One bar of {weight} after {time}", weight=bar, time=length_words(batch.recipe.cure.time)),
                say("about {weight}", weight=cured),
            )
        )
    return tuple(facts)


def _grams(mass: Mass) -> str:
    return f"{number(mass.grams, 1)}{NBSP}g"
