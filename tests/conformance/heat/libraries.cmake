list(APPEND libraries thawslip::kitchen)
