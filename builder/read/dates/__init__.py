"""Classes and the dates that were published last."""
