"""What a label says, in the words of its region and languages."""
