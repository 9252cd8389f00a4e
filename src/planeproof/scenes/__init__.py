"""Scenes: the recipes they are drawn from, crystals that turn, and cases on disk."""
