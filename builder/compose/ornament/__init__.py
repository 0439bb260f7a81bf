"""The mark of a recipe: worked numbers to a flower, the flower to SVG. Pure functions, no chance in them; lengths are in millimetres."""
