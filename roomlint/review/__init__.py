"""Rules run here: the rule protocol, windows, verdicts, waivers."""
