list(APPEND alone sizes_test.cpp storage_file_test.cpp)
# Thousands of faulty files are read.
set(optimised ON)
