"""Recipes as they are written and weighed: names, amounts, sums, scales, containers."""
