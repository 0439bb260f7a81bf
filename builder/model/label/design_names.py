"""The names of the designs of labels, in the order in which they are shown. How each looks is told in `compose/label_front/designs.py`."""

DESIGN_NAMES = ("posy", "poster", "linen", "garland", "slate", "sampler")
