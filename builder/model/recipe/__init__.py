"""Recipes and what is worked out of them. A weight is an exact fraction of a gram, and a figure cannot be made without its source."""
