"""The model of a room: frozen dataclasses in SI units, each knowing its place in the file."""
