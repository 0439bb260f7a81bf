"""Classes on their dates. A date is known by its class and the time at which it was first set."""
