"""What DEVELOPERS.md says of adding something, done on a copy: each addition touches as many files as it says there, and works."""
