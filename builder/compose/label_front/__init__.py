"""The front of a label as somebody composed it: designs, names as large as fits, and where the mark of the recipe stands."""
