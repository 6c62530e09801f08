"""What to cut and what to buy, as figures."""
