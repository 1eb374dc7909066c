# What comes with the program is read as the program does.
list(APPEND libraries thawslip::files)
