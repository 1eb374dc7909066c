list(APPEND libraries thawslip::app)
# Hundreds of days are laid out on every stock.
set(optimised ON)
