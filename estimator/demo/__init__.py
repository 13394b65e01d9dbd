"""A complete made-up job: its files ship in this folder and `estimator demo` copies them into a new one."""

FILES: tuple[str, ...] = ("job.toml", "main.txt", "yard.txt", "kitchen.txt")
