"""The languages the program speaks to people; the first is that of the source and of who says nothing else."""

LANGUAGES = ("en_US", "es_US")
