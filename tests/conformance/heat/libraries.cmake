list(APPEND libraries thawslip::kitchen)
list(APPEND alone core_course_test.cpp enthalpy_model_test.cpp regression_table_test.cpp)
