"""Questions of the trade: what makes them, how they are answered, and which lesson asks them."""
