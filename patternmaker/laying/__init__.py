"""The laying engine: shapes put beside each other, by quarter turns, at the least cost."""
