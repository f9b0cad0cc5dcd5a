"""What is kept: saved designs with their revisions, links, remarks, readings and proposals. Knows nothing of pages."""
