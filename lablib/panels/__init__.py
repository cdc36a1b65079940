"""Controls beside a picture: the only place that imports ipywidgets."""
