"""What the maker of a batch writes down at home, so that the next batch can be compared with it."""

from builder.compose.dates.length_words import length_words
from builder.compose.formula.ph_words import ph_words
from builder.compose.views.take_home import RecordView
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import say

WEEKS_ON_THE_SHEET = 7


def view_record(batch: WorkedBatch) -> RecordView:
    """Return the fields of the record of a batch, of temperatures only where something is heated; for soap that cures, also the weeks in
    which a marked bar is weighed.
    """
    fields = [(say("Made on"), ""), (say("Batch"), ""), (say("What came out, weight"), "")]
    if batch.grams.lye is not None:
        fields += [(say("Lye: maker, lot, purity"), ""), (say("Lye when mixed"), "°C / °F"), (say("Oils when mixed"), "°C / °F")]
    elif any(phase.heat_to for phase in batch.recipe.phases):
        fields += [(say("Hottest, coolest"), "°C / °F"), (say("Poured at"), "°C / °F")]
    if batch.cure is not None:
        fields.append((say("Ready on"), say("made + {time}", time=length_words(batch.cure.time))))
    elif batch.cures:
        fields.append((say("Ready on"), say("made on + the time of the cure")))
    if batch.grams.lye is not None:
        fields.append((say("pH, no test of free lye"), ""))
    elif ph_words(batch):
        fields.append((say("pH"), ""))
    weeks = [say("fresh"), *(say("week {number}", number=number) for number in range(1, WEEKS_ON_THE_SHEET + 1))] if batch.cures else []
    return RecordView(tuple(fields), tuple(weeks))
