# These tests start a CUPS server of their own and look at what it got, through CUPS itself.
find_program(CUPSD cupsd PATHS /usr/sbin)
find_program(CUPS_EXEC cups-exec PATHS /usr/lib/cups/daemon /usr/libexec/cups/daemon)
list(APPEND libraries thawslip::app)
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
if(THAWSLIP_CUPS AND CUPSD AND CUPS_EXEC)
    find_package(Cups REQUIRED)
    list(APPEND libraries Cups::Cups)
    add_compile_definitions(CUPSD="${CUPSD}" CUPS_EXEC="${CUPS_EXEC}")
else()
    list(REMOVE_ITEM sources "${folder}/server.cpp" "${folder}/print_test.cpp"
         "${folder}/media_name_test.cpp")
    list(APPEND sources "${folder}/without/skipped_test.cpp")
endif()
