"""Lye: what stops here can hurt, and no reason accepts it away."""
