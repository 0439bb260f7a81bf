"""A portrait in words: the text alternative of its mark, and the line beneath it that says how to read it."""

from builder.compose.ornament.portrait import Portrait
from builder.compose.recipe.wording import within
from builder.words.listed import listed
from builder.words.say import say, say_count


def mark_in_words(portrait: Portrait) -> str:
    """Return in words what the mark shows, for those who do not see it."""
    petals = len(portrait.petals)
    count = len(portrait.parts) + max(0, portrait.together - 1) - portrait.choices
    shown = {"recipe": portrait.recipe, "petals": petals, "largest": within(portrait.parts[0].name) or say("the small ones together")}
    if portrait.choices:
        first = say_count(
            "Mark of {recipe}: a flower of {petals} petals for one ingredient and what is chosen, the longest for {largest}.",
            "Mark of {recipe}: a flower of {petals} petals for {count} ingredients and what is chosen, the longest for {largest}.",
            count,
            **shown,
        )
    else:
        first = say_count(
            "Mark of {recipe}: a flower of {petals} petals, all for {largest}.",
            "Mark of {recipe}: a flower of {petals} petals for {count} ingredients, the longest for {largest}.",
            count,
            **shown,
        )
    return " ".join((first, *_of_the_heart(portrait)))


def how_to_read(portrait: Portrait) -> str:
    """Return in words how to read the mark, in one line."""
    rounds = portrait.rounds
    if rounds == 1 and portrait.choices:
        lines = [say("Each petal is an ingredient or a choice: the longer it is, the more there is of it.")]
    elif rounds == 1:
        lines = [say("Each petal is an ingredient: the longer it is, the more there is of it.")]
    elif portrait.choices:
        lines = [say("Each ingredient and each choice has {count} petals: the longer, the more there is of it.", count=rounds)]
    else:
        lines = [say("Each ingredient has {count} petals: the longer, the more there is of it.", count=rounds)]
    if portrait.together:
        lines.append(say("The {count} ingredients of which there is least are one petal together.", count=portrait.together))
    return " ".join((*lines, *_of_the_heart(portrait)))


def _of_the_heart(portrait: Portrait) -> list[str]:
    drawn = portrait.scents[:2]
    if not drawn:
        return []
    scents = listed([within(one) for one in drawn])
    return [say("The dots in the middle are the letters of {scents}, large ones for vowels.", scents=scents)]
