if(NOT TARGET thawslip_damage)
    add_subdirectory("${CMAKE_CURRENT_SOURCE_DIR}/damage" damage)
endif()
pkg_check_modules(qrcodegen REQUIRED IMPORTED_TARGET qrcodegencpp)
pkg_check_modules(zbar REQUIRED IMPORTED_TARGET zbar)
list(APPEND libraries thawslip_damage PkgConfig::qrcodegen PkgConfig::zbar)
list(APPEND sources "${CMAKE_CURRENT_SOURCE_DIR}/unit/code/random_messages.cpp")

# A compiler's optimiser once weighed masks wrongly: each of its levels is asked, under names of its own.
foreach(level 2 3)
    set(mask mask_at_O${level})
    add_library(${mask} OBJECT "${PROJECT_SOURCE_DIR}/src/code/mask.cpp")
    target_include_directories(${mask} PRIVATE "${PROJECT_SOURCE_DIR}/src")
    target_compile_options(${mask} PRIVATE -O${level}
                           $<$<CXX_COMPILER_ID:Clang>:-fconstexpr-steps=16777216>)
    target_compile_definitions(${mask} PRIVATE with_best_mask=with_best_${mask} Bits=Bits_${mask})
    target_link_libraries(${mask} PRIVATE thawslip_warnings)
    list(APPEND sources $<TARGET_OBJECTS:${mask}>)
endforeach()
