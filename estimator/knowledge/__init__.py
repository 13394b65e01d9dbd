"""Published facts: what codes, standards and geometry say, each with its source and the day it was looked at."""
