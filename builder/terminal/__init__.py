"""What people read: findings to stderr with the studio's own line, results to stdout, progress as a bar or as plain lines.

Nothing that a studio has written is taken for a sign to the terminal: no colours, no pictures for `:words:`, no control characters.
"""

from builder.terminal.findings import print_findings, print_tally, tally
from builder.terminal.progress import Progress
from builder.terminal.reference import print_explanation, print_page, print_written
from builder.terminal.results import print_card, print_published, print_table
from builder.terminal.shopping import print_shopping

__all__ = [
    "Progress",
    "print_card",
    "print_explanation",
    "print_findings",
    "print_page",
    "print_published",
    "print_shopping",
    "print_table",
    "print_tally",
    "print_written",
    "tally",
]
