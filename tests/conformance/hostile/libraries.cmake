# These tests run the program against files and surroundings that mean harm.
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
if(THAWSLIP_SANITIZE)
    add_compile_definitions(THAWSLIP_SANITIZED) # the sanitizers reserve terabytes of addresses
endif()
