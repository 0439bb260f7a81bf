"""What goes on skin, up to its limits: scents, colours, and what students may add of them."""
