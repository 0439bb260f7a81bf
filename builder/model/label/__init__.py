"""Labels: what a region wants, the sheets they are cut from, the letters they are set in. Nothing here knows a class."""
