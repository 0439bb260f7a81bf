"""Packs, prices and counts. Nothing here can hurt, so that only what cannot be read stops."""
