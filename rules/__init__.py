"""The built-in rule book, one chapter a module."""
