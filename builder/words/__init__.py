"""How names and numbers are written and compared, for messages and documents alike. Nothing here knows a noun of `model`."""
