"""The stages that come with Foredge."""
