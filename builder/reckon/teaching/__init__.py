"""A class to its plan: batches for the people who come, who watches, who weighs, what is got ready."""
