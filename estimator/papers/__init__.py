"""Step 7: a quote in, the papers that leave the house and those that stay in it out, as plain books of sheets."""
