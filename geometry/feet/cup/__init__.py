"""A round cup: the pad's seat drops into it, and a stem may enter the hole in its floor."""
