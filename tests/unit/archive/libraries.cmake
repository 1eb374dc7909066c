list(APPEND alone file_test.cpp sizes_test.cpp)
