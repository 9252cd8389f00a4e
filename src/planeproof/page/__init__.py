"""The page: a verdict as one HTML file that stands by itself, offline, without a server.

    text = page_html(verdict)

writing (the file) <- content (all that it says, one value) <- sheets, grounds, faults <- rows, lead, scenes,
sentences <- bars, writes, shots. The template, its style and its script are the files page.html, page.css and page.js.
"""

from planeproof.page.content import page_data
from planeproof.page.writing import page_html

__all__ = ["page_data", "page_html"]
