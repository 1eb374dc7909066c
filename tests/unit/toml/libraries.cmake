list(APPEND alone syntax_test.cpp)
