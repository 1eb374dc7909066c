list(APPEND libraries thawslip::kitchen)
# A model of the food, in thousands of layers, is what the formulas are held against.
set(optimised ON)
