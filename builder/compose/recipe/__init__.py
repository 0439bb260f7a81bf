"""A batch in words, tables and JSON. No number is worked out here, only written."""
