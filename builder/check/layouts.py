"""Documents of the studio's own, and its templates: what cannot be made, and who would see what is not for them."""

from collections.abc import Iterator

from builder.check.recipe.names_twice import ADDRESS_TAKEN
from builder.check.rule import LAYOUTS, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.own_document import FaultyLayout, LayoutFault
from builder.words.nearest import did_you_mean

NOT_DONE = "What this line asks for cannot be done with what it is given. A template shows what its view holds, and works out nothing."


@rule_on(
    LAYOUTS,
    FindingKind("document-like-unknown", STOP, "A document of the studio's own is like one that there is not."),
    FindingKind("document-not-for-screens", STOP, "A document of the studio's own is for screens, and is like one that is only for paper."),
    FindingKind("document-seen-by-too-many", STOP, "More people may see a document of the studio's own than the one that it is like."),
    FindingKind("document-name-not-plain", STOP, "The name of a document of the studio's own makes no address."),
    ADDRESS_TAKEN,
    FindingKind("template-missing", STOP, "A template is not there."),
    FindingKind("template-broken", STOP, "A template cannot be read, or cannot be filled in."),
    FindingKind("template-name-unknown", STOP, "A template asks for what its view does not hold."),
    FindingKind("template-drops-safety", STOP, "A template leaves out what ours says of a danger or of first aid."),
    FindingKind("style-hides-safety", STOP, "A style hides what is said of a danger or of first aid."),
    FindingKind("template-not-used", CAUTION, "No document uses this template."),
)
def find_faulty_layouts(faults: tuple[FaultyLayout, ...]) -> Iterator[Finding]:
    """Find what is wrong, and what to write instead."""
    for one in faults:
        yield _finding(one)


def _finding(one: FaultyLayout) -> Finding:
    at, written = one.place, one.written
    match one.fault:
        case LayoutFault.LIKE_NOTHING:
            wrong = f'There is no document "{written}" that this one could be like.'
            remedy = f"Write one of these: {', '.join(one.known)}.{did_you_mean(written, one.known)}"
            return stop("document-like-unknown", at, wrong, remedy)
        case LayoutFault.NOT_FOR_SCREENS:
            wrong = f'"{written}" is for screens, and is like one that is laid out to the millimetre of its paper ({one.said}).'
            return stop("document-not-for-screens", at, wrong, "Write `on: paper`.")
        case LayoutFault.SEEN_BY_TOO_MANY:
            wrong = f'"{written}" shows what the {one.said} holds, and that is not for all who would see it.'
            return stop("document-seen-by-too-many", at, wrong, f"Write `seen by: {one.known[0]}`, or let it be like another document.")
        case LayoutFault.NAME_NOT_PLAIN:
            wrong = f'Of the name "{written}" nothing is left in the name of a file, where only a to z and figures may stand.'
            return stop("document-name-not-plain", at, wrong, "Give it a name with such letters, for example: packing list.")
        case LayoutFault.ADDRESS_TAKEN:
            wrong = f'This document would be written over another: the {one.said} has the same address, "{written}".'
            return stop("address-taken", at, wrong, "Give it another name.")
        case LayoutFault.TEMPLATE_MISSING:
            wrong = f'There is no template "{written}", neither in the folder layouts beside studio.yaml nor among ours.'
            return stop("template-missing", at, wrong, f"Correct the name, or write the file.{did_you_mean(written, one.known)}")
        case LayoutFault.TEMPLATE_BROKEN:
            wrong = f"This file cannot be used: {one.said}." if one.said else NOT_DONE
            return stop("template-broken", at, wrong, "Mend this line. Our own templates show how each thing is written.")
        case LayoutFault.NAME_UNKNOWN:
            wrong = f'The template asks here for "{written}", which is not known in this place.'
            known = f"Known here: {', '.join(one.known)}." if one.known else "Nothing is known here by a name."
            return stop("template-name-unknown", at, wrong, f"{known}{did_you_mean(written, one.known)}")
        case LayoutFault.SAFETY_DROPPED:
            wrong = f'With this template the {one.said} no longer says, as it does with ours: "{written}"'
            remedy = f"Show its cautions as our own template does; you may add to them. `stillroom reference {at.file}` prints ours."
            return stop("template-drops-safety", at, wrong, remedy)
        case LayoutFault.SAFETY_HIDDEN:
            wrong = f'With `{one.known[0]}` nobody can read on the {one.said}: "{written}"'
            remedy = "Cautions may look otherwise, in letters that are large and dark enough. Take this out, or let it be about less."
            return stop("style-hides-safety", at, wrong, remedy)
        case _:
            assert one.fault is LayoutFault.NOT_USED
            wrong = f'No document uses the template "{written}", and none of ours has this name.'
            return caution(
                "template-not-used",
                at,
                wrong,
                "Name it under `documents:` in studio.yaml, or give it the name of one of ours.",
            )
