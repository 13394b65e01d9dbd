"""Step 3: needs in; the repairs the rules allow, the cheapest sets of them and the options worth showing, out."""
