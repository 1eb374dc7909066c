list(APPEND libraries thawslip::intake) # reads the storage table
