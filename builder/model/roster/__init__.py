"""Who comes, what they have chosen, and their allergies. Names never leave the documents for the staff."""
