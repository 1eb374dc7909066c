list(APPEND alone sizes_test.cpp storage_file_test.cpp)
