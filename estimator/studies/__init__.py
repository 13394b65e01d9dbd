"""Questions asked of the whole way: ways side by side, where the choice turns, what moves the price."""
