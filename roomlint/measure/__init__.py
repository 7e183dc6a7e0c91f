"""Binds one design to the pure figures, with uncertainty, and remembers what it computed."""
