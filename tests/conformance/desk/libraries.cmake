# What the page is answered, held against what the program says.
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
list(APPEND libraries thawslip::app)
