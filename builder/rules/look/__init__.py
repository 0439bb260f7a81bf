"""The colours of a studio's pages: those that it names, and those that follow from them."""
