# The same tests once more, of archives on a server. One private server is started for the program,
# so its cases are one test to ctest. A few of them are about what a server alone has.
add_library(thawslip_test_postgres STATIC support/cutting_proxy.cpp support/postgres.cpp)
target_include_directories(thawslip_test_postgres PUBLIC "${CMAKE_CURRENT_SOURCE_DIR}")
target_link_libraries(thawslip_test_postgres PUBLIC thawslip::archive PRIVATE thawslip_warnings)

if(THAWSLIP_POSTGRESQL)
    file(GLOB server_sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/unit/archive/server/*.cpp")
    add_executable(unit_archive_on_server
        unit/archive/archive_test.cpp unit/archive/history_test.cpp unit/archive/identity_test.cpp
        unit/archive/sizes_test.cpp ${server_sources})
    thawslip_test_program(unit_archive_on_server thawslip_test_postgres thawslip::archive)
    target_include_directories(unit_archive_on_server PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/unit/archive")
    target_compile_definitions(unit_archive_on_server PRIVATE THAWSLIP_ON_SERVER)
    add_test(NAME "unit/archive on a server: all that is about no file holds there too"
             COMMAND unit_archive_on_server)
    set_tests_properties("unit/archive on a server: all that is about no file holds there too"
        PROPERTIES LABELS unit COST 110 # the longest: it begins first
                   FAIL_REGULAR_EXPRESSION "test cases: *0 "
                   SKIP_REGULAR_EXPRESSION "skipped: ")
endif()
