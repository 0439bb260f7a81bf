"""The guide: a walk from an idea to labels, and worked examples whose studios are made anew whenever it is written.

A page is Markdown in `content/guide/`. It shows the files of a studio, what is typed and what the program answers, and names the sheets
whose pictures stand in it; nothing of that is drawn or copied by hand. Nothing of a studio of somebody's own is read here.
"""

from builder.guide.pages import find_guide_page, guide_pages
from builder.guide.shown import files_of

__all__ = ["files_of", "find_guide_page", "guide_pages"]
