if(NOT TARGET thawslip_damage)
    add_subdirectory("${CMAKE_CURRENT_SOURCE_DIR}/damage" damage)
endif()
pkg_check_modules(qrcodegen REQUIRED IMPORTED_TARGET qrcodegencpp)
pkg_check_modules(zbar REQUIRED IMPORTED_TARGET zbar)
list(APPEND libraries thawslip_damage PkgConfig::qrcodegen PkgConfig::zbar)
list(APPEND sources "${CMAKE_CURRENT_SOURCE_DIR}/unit/code/random_messages.cpp")

# A compiler's optimiser once weighed masks wrongly: each of its levels is asked.
foreach(level 2 3)
    set(program mask_at_O${level})
    add_executable(${program} "${CMAKE_CURRENT_SOURCE_DIR}/conformance/code/mask_test.cpp"
                   "${PROJECT_SOURCE_DIR}/src/code/mask.cpp")
    target_include_directories(${program} PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}")
    target_compile_options(${program} PRIVATE -O${level})
    target_link_libraries(${program} PRIVATE thawslip_test_main thawslip::code PkgConfig::qrcodegen
                          thawslip_warnings)
    add_test(NAME "conformance/code: masks are right at the optimiser's level ${level}"
             COMMAND ${program})
endforeach()
