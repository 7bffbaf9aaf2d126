"""``foredge watch``: compile on every save and show the page as it is now."""
