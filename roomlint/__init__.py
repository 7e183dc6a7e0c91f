"""roomlint reviews designs of residential media rooms: text in, located findings out."""

__version__ = "0.2.0"
