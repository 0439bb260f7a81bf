"""What commands do beside checking and publishing: they begin a studio, add to it, look names up, and help editors and shells.

Each task takes the options of its command and gives the exit status. `place.py` says which studio is meant.
"""
