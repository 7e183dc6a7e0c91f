"""The model of a room: elements in SI units that are declared once, each knowing its place in the file."""
