"""Text in: YAML with positions, schema check, quantities, product and house files."""
