"""The pieces that covers are put together from."""
