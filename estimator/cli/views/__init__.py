"""Records in, lines of text out, made for a width; nothing here reads a file or prints, save `screen` and `problems`."""
