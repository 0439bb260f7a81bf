"""Packs and costs in words, for the staff alone; home sheets show what a thing costs only where the studio wants it."""
