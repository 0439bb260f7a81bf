"""What is needed, what is in stock, and the packs that cover the rest for the least money."""
