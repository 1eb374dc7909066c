list(APPEND libraries thawslip::archive)
