# These tests run the program and judge what it says.
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
list(APPEND libraries thawslip::app)
list(APPEND alone check_test.cpp choices_test.cpp foods_test.cpp plan_test.cpp setup_test.cpp)
