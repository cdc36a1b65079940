"""A ticket taken down the whole route of a job: read it, work it, print the job sheet."""
