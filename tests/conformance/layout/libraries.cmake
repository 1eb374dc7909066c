list(APPEND libraries thawslip::app)
