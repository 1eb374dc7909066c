list(APPEND libraries thawslip::intake) # reads the storage table
list(APPEND alone temperatures_test.cpp)
