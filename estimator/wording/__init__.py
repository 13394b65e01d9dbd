"""Sentences in, what people read out: English and Spanish from compiled catalogs; numbers, lengths and days as they write them."""
