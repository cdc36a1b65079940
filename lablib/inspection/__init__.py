"""Is the finished pair right: tolerances as data, and what they allow."""
