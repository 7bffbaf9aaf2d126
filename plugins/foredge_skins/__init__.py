"""Skins of a relief: home-made clays, bought clay, tissue and glue."""
