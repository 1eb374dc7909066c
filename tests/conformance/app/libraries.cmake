# These tests run the program and judge what it says.
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
list(APPEND libraries thawslip::app)
