"""Pure rules about labels and containers: the panel that a buyer sees, where a label sits, what sizes there is room for."""
