"""What people read: findings to stderr with the studio's own line, results to stdout, progress as a bar or as plain lines.

Nothing that a studio has written is taken for a sign to the terminal: no colours, no pictures for `:words:`, no control characters.
"""
