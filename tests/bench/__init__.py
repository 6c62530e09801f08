"""How fast it is; not run with the tests, since a busy machine must not fail them."""
