"""Sound and unsound studios spoilt at random, always the same for the same seed: whatever a studio holds, the command answers in words.

By hand, and for as long as one likes: `python -m tests.fuzz --seeds 0 50000`. A seed that fails is told with its changes, and
`python -m tests.fuzz --seeds 4711 4712 --keep FOLDER` leaves the studio there to look at.
"""
