"""Documents of a studio's own become rows beside ours: another template for the view of one of them, on screen or paper.

It lies beside the document that it is like, and nobody sees it who may not see that one.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any, get_type_hints

from builder.compose.addresses import PAPER, Address, plain_name
from builder.compose.document_kind import AnyKind, Composed, Readers, ToPrint, none_to_print
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import sentence
from builder.compose.scopes import CHOICE, CLASS, DATE, HOME_SIZE, LABELS, PAGE, STUDIO
from builder.compose.views.frame import Frame
from builder.model.own_document import FaultyLayout, LayoutFault, OwnDocument, SeenBy
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.fold import fold

# Where a document of the studio's own lies, by what it is about: in the studio, and for everybody.
PATHS = {
    STUDIO: ("{own}", "{own}"),
    PAGE: ("{{page}}--{own}", "{{page}}--{own}"),
    CHOICE: ("find/{{value}}--{own}", "find/{{value}}--{own}"),
    CLASS: ("{{class}}/{own}", "classes/{{class}}--{own}"),
    HOME_SIZE: ("{{class}}/{own}-{{recipe}}--{{size}}", ""),
    DATE: ("{{class}}/{{date}}/{own}", ""),
    LABELS: ("{{class}}/{{date}}/{own}-{{filling}}", ""),
}
CIRCLES = tuple(SeenBy)
KEY = "[a-z0-9]+(?:-[a-z0-9]+)*"


def own_kinds(studio: Studio, ours: Sequence[AnyKind]) -> tuple[AnyKind, ...]:
    """Return a row for each document of the studio's own that is like one of ours; any other is a fault."""
    by_name = _by_name(ours)
    own = ((one, by_name.get(one.like.key)) for one in studio.profile.documents)
    return tuple(_kind(one, like) for one, like in own if like)


def faults_of(studio: Studio, ours: Sequence[AnyKind]) -> Iterator[FaultyLayout]:
    """Find what is wrong with the documents of the studio's own, as studio.yaml describes them."""
    by_name = _by_name(ours)
    lying = list(ours)
    for own in studio.profile.documents:
        like = by_name.get(own.like.key)
        if like is None:
            yield FaultyLayout(LayoutFault.LIKE_NOTHING, own.like.place, own.like.text, tuple(by_name))
            continue
        if not own.on_paper and get_type_hints(like.view)["frame"] != Frame:
            yield FaultyLayout(LayoutFault.NOT_FOR_SCREENS, own.like.place, own.name.text, said=like.name)
        if _widest(like.readers) not in CIRCLES[: CIRCLES.index(own.seen_by) + 1]:
            yield FaultyLayout(LayoutFault.SEEN_BY_TOO_MANY, own.at("seen by"), own.name.text, (_widest(like.readers),), like.name)
            continue
        kind = _kind(own, like)
        other = next((one for one in lying if _lies_at(kind, one)), None)
        if not plain_name(own.name.text):
            yield FaultyLayout(LayoutFault.NAME_NOT_PLAIN, own.name.place, own.name.text)
        elif other or _is_page(kind, studio):
            yield FaultyLayout(LayoutFault.ADDRESS_TAKEN, own.name.place, kind.path, said=other.name if other else "page of text")
        lying.append(kind)


def _by_name(ours: Iterable[AnyKind]) -> Mapping[str, AnyKind]:
    return {fold(kind.name): kind for kind in ours if kind.template}


def _widest(readers: Readers) -> SeenBy:
    """Return the widest circle that may see what these readers see."""
    return next((seen_by for seen_by in SeenBy if seen_by == readers.value), SeenBy.STAFF)


def _kind(own: OwnDocument, like: AnyKind) -> AnyKind:
    # Who sees what the staff see of one that names people sees their names.
    readers = like.readers if own.seen_by is SeenBy.STAFF and like.readers is Readers.STAFF_WITH_NAMES else Readers(str(own.seen_by))
    path = PATHS[like.scope][readers is Readers.PUBLIC].format(own=plain_name(own.name.text))

    def compose(edition: Edition, subject: Any, here: Address) -> Composed | None:
        composed = like.compose(edition, subject, here)
        if composed is None:
            return None
        name = sentence(own.name.text)
        title = labelled(name, of_what) if (of_what := like.scope.title(subject)) else name
        view: Any = composed.view
        around = frame(edition, here, title, title)
        return Composed(replace(view, frame=replace(view.frame, title=around.title, description=around.description)))

    def copies(edition: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
        is_made = like.copies is none_to_print or any(like.copies(edition, plan))
        if own.copies and is_made and like.scope not in (STUDIO, PAGE):
            yield ToPrint(labelled(own.name, own.copies), own.name.text if like.scope is DATE and own.on_paper else "", said=own.copies)

    return replace(
        like,
        name=own.name.text,
        path=path + (PAPER if own.on_paper else ".html"),
        template=own.template.text,
        compose=compose,
        copies=copies,
        readers=readers,
        public_path="",
        like=like.name,
    )


def _lies_at(kind: AnyKind, other: AnyKind) -> bool:
    """Tell whether two kinds can lie at one address, by what stands between the names of their paths."""
    if kind.readers.folder is not other.readers.folder or (other.scope is PAGE and kind.scope is not PAGE):
        return False
    pattern = re.sub(r"\\{filling\\}", f"{KEY}(?:--{KEY})?", re.escape(other.path))
    return re.fullmatch(re.sub(r"\\{[a-z]+\\}", KEY, pattern), re.sub(r"\{[a-z]+\}", "x", kind.path)) is not None


def _is_page(kind: AnyKind, studio: Studio) -> bool:
    return kind.readers is Readers.PUBLIC and kind.path.removesuffix(".html") in studio.pages
