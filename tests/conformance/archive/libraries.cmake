# These tests run the program with an archive of its own, and look into it with SQLite's shell.
list(APPEND libraries thawslip::app thawslip_test_poppler)
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
