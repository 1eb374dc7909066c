list(APPEND libraries thawslip::kitchen)
list(APPEND alone core_course_test.cpp enthalpy_model_test.cpp regression_table_test.cpp)
# A model of the food, in thousands of layers, is what the formulas are held against.
set(optimised ON)
