"""The browser's fixtures, for the tests beside this file."""

from browser_fixtures import chromium, folder, watched

__all__ = ["chromium", "folder", "watched"]
