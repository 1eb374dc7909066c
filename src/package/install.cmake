# What `cmake --install` puts where. Two components: the program for cooks, and the library with
# its headers for those who write C++ with it.
include(CMakePackageConfigHelpers)

set(share "${CMAKE_INSTALL_DATADIR}/thawslip")
set(package_folder "${CMAKE_INSTALL_LIBDIR}/cmake/thawslip")

# The program and what it reads.
install(TARGETS thawslip RUNTIME COMPONENT program)
install(DIRECTORY layouts DESTINATION "${share}" COMPONENT program FILES_MATCHING PATTERN "*.toml")
install(FILES fonts/faces.toml DESTINATION "${share}/fonts" COMPONENT program)
install(FILES layouts/README.md RENAME layouts.md
        DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/thawslip" COMPONENT program)
install(FILES samples/orchard-day.toml
        DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/thawslip/examples" COMPONENT program)

# The manual page, packed as Debian wants it, and the completions of three shells. zsh looks into
# another folder for what a distribution brings than for what is installed by hand.
find_program(GZIP gzip REQUIRED)
set(manual "${PROJECT_BINARY_DIR}/thawslip.1.gz")
add_custom_command(OUTPUT "${manual}"
    COMMAND "${GZIP}" -9nc "${PROJECT_SOURCE_DIR}/src/app/manual/thawslip.1" > "${manual}"
    DEPENDS "${PROJECT_SOURCE_DIR}/src/app/manual/thawslip.1" VERBATIM)
add_custom_target(manual ALL DEPENDS "${manual}")
install(FILES "${manual}" DESTINATION "${CMAKE_INSTALL_MANDIR}/man1" COMPONENT program)
set(completions "${PROJECT_BINARY_DIR}/src/app/completions")
install(FILES "${completions}/thawslip"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/bash-completion/completions" COMPONENT program)
install(FILES "${completions}/thawslip.fish"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d" COMPONENT program)
install(CODE "
    set(zsh site-functions)
    if(CMAKE_INSTALL_PREFIX MATCHES \"/usr/?$\")
        set(zsh vendor-completions)
    endif()
    file(INSTALL \"${completions}/_thawslip\"
         DESTINATION \"\${CMAKE_INSTALL_PREFIX}/${CMAKE_INSTALL_DATADIR}/zsh/\${zsh}\")"
        COMPONENT program)

# Debian brings the font files in packages of their own; a tree that is moved to a machine without
# them can bring its own, with their licences.
if(THAWSLIP_INSTALL_FONTS)
    file(READ fonts/faces.toml faces)
    string(REGEX MATCHALL "[A-Za-z-]+/[A-Za-z-]+\\.ttf" files "${faces}")
    list(REMOVE_DUPLICATES files)
    foreach(file IN LISTS files)
        get_filename_component(folder "${file}" DIRECTORY)
        install(FILES "/usr/share/fonts/truetype/${file}" DESTINATION "${share}/fonts/${folder}"
                COMPONENT program)
    endforeach()
    foreach(package fonts-clear-sans fonts-dejavu-core)
        install(FILES "/usr/share/doc/${package}/copyright" RENAME "${package}-copyright"
                DESTINATION "${share}/fonts" COMPONENT program)
    endforeach()
endif()

# The library: a target for each layer, and thawslip::thawslip for all of them. The command line
# is no part of it.
add_library(thawslip_all INTERFACE)
add_library(thawslip::thawslip ALIAS thawslip_all)
set_target_properties(thawslip_all PROPERTIES EXPORT_NAME thawslip)
get_property(layers GLOBAL PROPERTY THAWSLIP_LAYERS)
list(TRANSFORM layers PREPEND "thawslip::" OUTPUT_VARIABLE layer_targets)
target_link_libraries(thawslip_all INTERFACE ${layer_targets})
list(TRANSFORM layers PREPEND "thawslip_" OUTPUT_VARIABLE installed)
install(TARGETS ${installed} thawslip_all EXPORT thawslip
        ARCHIVE DESTINATION "${CMAKE_INSTALL_LIBDIR}/thawslip" COMPONENT development)
install(EXPORT thawslip NAMESPACE thawslip:: FILE thawslip-targets.cmake
        DESTINATION "${package_folder}" COMPONENT development)

# Headers are included as <thawslip/layout/compose.h> once they are installed.
set(headers "${PROJECT_BINARY_DIR}/include/thawslip")
install(CODE "set(layers \"${layers}\")\nset(from \"${PROJECT_SOURCE_DIR}/src\")\nset(to \"${headers}\")"
        COMPONENT development)
install(SCRIPT "${CMAKE_CURRENT_LIST_DIR}/public_headers.cmake" COMPONENT development)
install(DIRECTORY "${headers}" DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}" COMPONENT development)

configure_package_config_file("${CMAKE_CURRENT_LIST_DIR}/thawslip-config.cmake.in"
    "${PROJECT_BINARY_DIR}/thawslip-config.cmake"
    INSTALL_DESTINATION "${package_folder}" PATH_VARS share)
# Before 1.0 any minor version may change what the headers promise.
write_basic_package_version_file("${PROJECT_BINARY_DIR}/thawslip-config-version.cmake"
    COMPATIBILITY SameMinorVersion)
install(FILES "${PROJECT_BINARY_DIR}/thawslip-config.cmake"
              "${PROJECT_BINARY_DIR}/thawslip-config-version.cmake"
        DESTINATION "${package_folder}" COMPONENT development)
