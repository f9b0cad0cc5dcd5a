"""Words that serve several kinds, in those of one."""

from collections.abc import Mapping


def in_own_terms(words: str, terms: Mapping[str, str]) -> str:
    """The same sentence with each of the terms in a kind's own words, one after the other.

    >>> in_own_terms("The lip stays off the cup's rim.", {"cup's rim": "teeth's tips", "cup": "saddle"})
    "The lip stays off the teeth's tips."
    """
    for theirs, ours in terms.items():
        words = words.replace(theirs, ours)
    return words
