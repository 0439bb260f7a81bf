"""What a formula does as heat and as a mixture. Temperatures are in degC, and a time is always two bounds."""
