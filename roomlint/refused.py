"""How whatever computes refuses: ground, for what a design works out refuses as figures do."""


class Refused(ValueError):  # noqa: N818  a refusal is an answer, not an error of the program
    """A figure does not hold for these numbers: a matter of the design, told in plain words, and no bug."""
