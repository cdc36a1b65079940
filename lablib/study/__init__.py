"""Learning machinery that knows no optics: questions and their marks, and the record of what was answered."""
