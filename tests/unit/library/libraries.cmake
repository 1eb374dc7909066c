list(APPEND libraries thawslip::archive thawslip::code)
