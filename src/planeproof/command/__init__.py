"""The command line: parse, call, print. A file a command; what is heavy is imported when a command runs."""
