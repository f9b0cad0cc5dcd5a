"""The web around the pad: pages, data addresses and files. Does no arithmetic on dimensions."""
