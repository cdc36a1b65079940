"""The browser's fixtures, for the tests beside this file."""

from browser_fixtures import chromium, folder, no_way_out, pictures, watched

__all__ = ["chromium", "folder", "no_way_out", "pictures", "watched"]
