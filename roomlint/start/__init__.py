"""A first file: from a few answers to a text that checks at once, its places marked as a proposal."""
