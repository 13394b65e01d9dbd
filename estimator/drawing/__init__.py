"""Pictures drawn by the program: points and colors in, PNG bytes out."""
