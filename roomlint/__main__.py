"""Run roomlint as a module."""

from roomlint.cli import main

if __name__ == "__main__":
    main(prog_name="roomlint")
