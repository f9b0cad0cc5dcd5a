"""What somebody with bad intentions sends, each attack a test."""
