list(APPEND alone message_test.cpp)
