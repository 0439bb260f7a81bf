"""What a recipe says of its lye, and how strong alkalis and acids are. A strength is a range, never a bare figure."""
