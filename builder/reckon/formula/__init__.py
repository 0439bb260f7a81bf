"""Emulsions, HLB and heat: bounds where the trade has no figure."""
