list(APPEND alone core_courses_test.cpp dinner_plan_test.cpp freezer_next_test.cpp part_test.cpp
    printing_test.cpp)
