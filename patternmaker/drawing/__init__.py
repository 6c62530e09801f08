"""What each line looks like, lettering, and the recorded drawings that writers play."""
