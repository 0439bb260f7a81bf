"""What a studio may write and what the program answers, read from the code that does it: no list here is kept by hand beside another.

Shapes give the keys, kinds of finding the names, rules of sums the formulas; what is told at length is Markdown in `content/reference/`.
A page is Markdown, which a terminal shows as it is and which becomes HTML. Nothing of a studio is read here.
"""

from builder.reference.explanations import Explanation, explain, finding_names
from builder.reference.page import Page
from builder.reference.pages import find_page, pages
from builder.reference.publication import reference_publication, text_publication

__all__ = ["Explanation", "Page", "explain", "find_page", "finding_names", "pages", "reference_publication", "text_publication"]
