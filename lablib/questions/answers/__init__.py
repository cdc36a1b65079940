"""The trade's own answers: prescriptions, base directions, prisms."""
