"""The drawing surface on each library that writes files; the only rooms that import them."""
