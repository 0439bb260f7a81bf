"""The fonts that are printed: where their files lie, and how their outlines measure. The only room that opens a font."""
