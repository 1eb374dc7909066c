list(APPEND alone giving_way_test.cpp layout_file_test.cpp printer_settings_test.cpp
    second_language_test.cpp solve_test.cpp stock_drawing_test.cpp)
