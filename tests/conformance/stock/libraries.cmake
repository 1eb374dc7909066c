list(APPEND libraries thawslip::layout)
