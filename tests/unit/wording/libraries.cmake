# A day of sizes, ways to thaw and sides is read as a cook writes it.
list(APPEND libraries thawslip::intake)
