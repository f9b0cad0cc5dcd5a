"""The first letter of words: a capital where a sentence or heading begins, a small one inside a sentence."""


def upper_first(words: str) -> str:
    """Words as they begin a sentence or a heading; all other letters stay as they are.

    >>> upper_first("slot floor"), upper_first("UHMW polyethylene"), upper_first("")
    ('Slot floor', 'UHMW polyethylene', '')
    """
    return words[:1].upper() + words[1:]


def lower_first(words: str) -> str:
    """Words as they stand inside a sentence; all other letters stay as they are.

    >>> lower_first("Slot floor"), lower_first("Lip at section A–A"), lower_first("")
    ('slot floor', 'lip at section A–A', '')
    """
    return words[:1].lower() + words[1:]
