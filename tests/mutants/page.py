"""Write the page about the last run anew, after a change of ``survivors.toml``: python -m tests.mutants.page."""

from tests.mutants.table import PAGE, page_text, read_reasons, read_rows

if __name__ == "__main__":
    PAGE.write_text(page_text(read_rows(), read_reasons()), "utf-8")
