"""A saddle with teeth or lugs: the pad stands on the land between them, or on their tips with a skirt around them."""
