"""What goes wrong with machines, each fault a test: nothing that was acknowledged is lost."""
