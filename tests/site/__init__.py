"""The site in a real browser and under the checkers of others: every page of the example as it is published."""
