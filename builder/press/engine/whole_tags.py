"""In the tags of a PDF a table, a list, a part or a sentence that goes on on the next page is one, as it is in the HTML.

The library tags a sheet page by page, so that whoever listens would hear a list of three and then another of two, and the heads of a table
once more in its midst. Here what was made of one element is joined: the later piece gives what it holds to the earlier one. Of heads and
feet that a table repeats one is kept, the first head and the last foot; the others are marked as what is no content, like running lines.

Source: ISO 32000-1 (PDF 1.7), 14.6 to 14.8, from memory: what lies on another page than its element is named together with its page; a
table has at most one head and one foot; what is no content is an artifact.
"""

from typing import Any

from pydyf import Array, Dictionary

from builder.press.engine.private_names import made_of

# What a table repeats on each page, and whether the first or the last of them stays.
REPEATED = {"/THead": "first", "/TFoot": "last"}


def join_what_goes_on(pdf: Any) -> None:
    """Join in the tree of tags, once it is whole, what was made of one element on several pages."""
    _Tree(pdf).join()


class _Tree:
    """The elements of the tree by their references, and what has become of those that are no longer in it."""

    def __init__(self, pdf: Any) -> None:
        self._objects = {each.reference: each for each in pdf.objects}
        (self._top,) = (each for each in pdf.objects if isinstance(each, dict) and each.get("S") == "/Document")
        self._root = self._objects[self._top["P"]]
        self._joined: dict[bytes, bytes | None] = {}
        self._ends: dict[bytes, bytes] = {}

    def join(self) -> None:
        self._join_kids_of(self._top)
        if self._joined:
            self._tell_who_holds_what()

    def _join_kids_of(self, parent: Any) -> None:
        """Join those of an element that follow each other and are of one element of the HTML; then what is in them."""
        kids, before = Array(), None
        for kid in parent["K"]:
            element = self._objects[kid] if isinstance(kid, bytes) else None
            if before is not None and element is not None and self._goes_on(before, element):
                self._give(element, before)
            else:
                kids.append(kid)
                before = element
        parent["K"] = kids
        for element in self._elements_in(parent):
            self._join_kids_of(element)

    def _goes_on(self, before: Any, element: Any) -> bool:
        """Tell whether an element is the rest of the one before it, on a later page."""
        return (
            element.get("Type") == before.get("Type") == "/StructElem"
            and element["S"] == before["S"]
            and made_of(element) is not None
            and made_of(element) is made_of(before)
            and element["Pg"] != self._ends.get(before.reference, before["Pg"])
        )

    def _give(self, later: Any, earlier: Any) -> None:
        """Move all that an element holds to the one that it goes on from."""
        if later["S"] == "/Table":
            self._keep_one_of_each(earlier, later)
        for kid in later["K"]:
            if isinstance(kid, int):
                earlier["K"].append(Dictionary({"Type": "/MCR", "Pg": later["Pg"], "MCID": kid}))
            else:
                earlier["K"].append(kid)
                if "P" in self._objects[kid]:
                    self._objects[kid]["P"] = earlier.reference
        self._joined[later.reference] = earlier.reference
        self._ends[earlier.reference] = later["Pg"]

    def _keep_one_of_each(self, earlier: Any, later: Any) -> None:
        """Take the heads out of the later part of a table that the earlier part has, and the feet out of the earlier."""
        for one in self._elements_in(later):
            for other in self._elements_in(earlier):
                if one["S"] in REPEATED and made_of(one) is made_of(other):
                    table, gone, kept = (later, one, other) if REPEATED[one["S"]] == "first" else (earlier, other, one)
                    table["K"].remove(gone.reference)
                    self._make_artifact(gone, kept)

    def _make_artifact(self, gone: Any, kept: Any) -> None:
        """Mark what an element holds as no content. Cells that it heads are headed by the one that is kept, which is of the same form."""
        self._joined[gone.reference] = None
        if "ID" in gone:
            # Whatever names this cell holds the same string.
            gone["ID"].string = kept["ID"].string
        for mcid in (kid for kid in gone["K"] if isinstance(kid, int)):
            content = self._objects[self._objects[gone["Pg"]]["Contents"]].stream
            at = content.index({"MCID": mcid})
            content[at - 1 : at + 2] = ["/Artifact", b"BMC"]
        for one, other in zip(self._elements_in(gone), self._elements_in(kept), strict=True):
            self._make_artifact(one, other)

    def _tell_who_holds_what(self) -> None:
        """Write down for each piece of content, and for each link, which element holds it now."""
        numbers = self._objects[self._root["ParentTree"]]["Nums"]
        for place, one in enumerate(numbers):
            if isinstance(one, list):
                one[:] = (self._holder(each) for each in one)
            else:
                numbers[place] = self._holder(one)

    def _holder(self, reference: Any) -> Any:
        holder = self._joined.get(reference, reference)
        return b"null" if holder is None else holder

    def _elements_in(self, parent: Any) -> list[Any]:
        """Return the elements that an element holds now; what is in it may change while one goes through them."""
        found = (self._objects[kid] for kid in parent["K"] if isinstance(kid, bytes))
        return [one for one in found if one.get("Type") == "/StructElem"]
