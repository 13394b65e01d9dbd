"""One module a command, each with a function `command`; imported only when it runs."""
