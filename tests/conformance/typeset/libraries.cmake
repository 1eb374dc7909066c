list(APPEND libraries thawslip::typeset)
