"""The nouns that the stages hand to one another: frozen values, standard library only."""
