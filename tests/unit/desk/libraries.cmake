#What comes with the program is read as the program does.
list(APPEND libraries thawslip::files)
list(APPEND alone bag_routes_test.cpp freezer_routes_test.cpp new_day_test.cpp pairing_test.cpp)
