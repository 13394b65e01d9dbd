"""Step 5: takeoffs of a scope in, its price out; the cost of a candidate for the search; the range; the homeowner's money."""
