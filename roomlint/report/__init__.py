"""Verdicts out: a finished review goes in, text comes out."""
