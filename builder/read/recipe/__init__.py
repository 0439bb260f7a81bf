"""Recipes, ingredient cards, containers and kinds of product, each thing with the place where it was written."""
