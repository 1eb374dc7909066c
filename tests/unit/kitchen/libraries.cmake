# What a rule finds is held against the words of every language.
list(APPEND libraries thawslip::wording)
