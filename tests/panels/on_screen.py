"""What a panel shows, read as a person reads it."""

import re
from html import unescape


def said(panel) -> str:
    """Return the sentence under the picture."""
    return unescape(re.sub("<[^>]+>", "", panel._sentence.value))


def rows(panel) -> dict[str, str]:
    """Return figure and unit of every row of the table, by its label."""
    found = re.findall(r"<th[^>]*>(.*?)</th><td>(.*?)</td><td>(.*?)</td>", panel._table.value)
    return {label: f"{figure} {unit}".strip() for label, figure, unit in found}


def opened(panel, path, text: str) -> str:
    """Open a ticket by its buttons and return what the panel says to it."""
    path.write_text(text, encoding="utf-8")
    panel._tickets.again.click()
    panel._tickets.files.value = path.name
    panel._tickets.open.click()
    return unescape(re.sub("<[^>]+>", "", panel._tickets.status.value))
