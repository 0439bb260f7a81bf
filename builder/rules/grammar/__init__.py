"""English grammar as steps of lessons need it: what is an order, and what a negation rules over (common knowledge, no source)."""
