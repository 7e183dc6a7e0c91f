"""The command line; the only place that prints or exits."""


def main() -> None:
    """Run the command line."""
