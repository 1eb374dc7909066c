# What the page is answered, held against what the program says: its routes alone; the real program,
# asked over sockets; and a CUPS server of our own where there can be one.
find_program(CUPSD cupsd PATHS /usr/sbin)
find_program(CUPS_EXEC cups-exec PATHS /usr/lib/cups/daemon /usr/libexec/cups/daemon)
list(APPEND libraries thawslip::app)
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
if(NOT THAWSLIP_DESK)
    list(FILTER sources EXCLUDE REGEX
         "/(begin_and_end|guards|photographs|printing|saving|spool)_test\\.cpp$")
    list(APPEND sources "${folder}/without/skipped_test.cpp")
elseif(THAWSLIP_CUPS AND CUPSD AND CUPS_EXEC)
    find_package(Cups REQUIRED)
    list(APPEND libraries Cups::Cups)
    list(APPEND sources "${folder}/../spool/server.cpp")
    add_compile_definitions(CUPSD="${CUPSD}" CUPS_EXEC="${CUPS_EXEC}")
else()
    list(REMOVE_ITEM sources "${folder}/spool_test.cpp")
    list(APPEND sources "${folder}/without/no_printers_test.cpp")
endif()
