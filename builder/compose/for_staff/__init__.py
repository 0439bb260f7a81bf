"""What the staff of one date have in hand: the run by the clock, all weighings, and what is looked up but not carried to the table."""
