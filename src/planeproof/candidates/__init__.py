"""Schedulers that ship: the reference ones, each a strategy of its own, and broken ones, one planted fault each."""
