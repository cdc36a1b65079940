"""Drawings of what was computed; no trade arithmetic happens here."""
