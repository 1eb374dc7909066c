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

# What a desktop shows: the menu's entry, its icon, what software catalogues say, and which files a
# double click opens with it. Without a server there is no page.
if(THAWSLIP_DESK)
    set(desktop "${CMAKE_CURRENT_LIST_DIR}/desktop")
    install(FILES "${desktop}/thawslip.desktop"
            DESTINATION "${CMAKE_INSTALL_DATADIR}/applications" COMPONENT program)
    install(FILES "${desktop}/localhost.thawslip.Thawslip.metainfo.xml"
            DESTINATION "${CMAKE_INSTALL_DATADIR}/metainfo" COMPONENT program)
    install(FILES "${desktop}/thawslip-day.xml"
            DESTINATION "${CMAKE_INSTALL_DATADIR}/mime/packages" COMPONENT program)
    install(FILES src/desk/page/icon.svg RENAME thawslip.svg
            DESTINATION "${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps" COMPONENT program)
endif()

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

# The library: all layers but the program's, in one file, static or shared as BUILD_SHARED_LIBS says.
# Its headers are those of src/library/include and no others.
get_property(layers GLOBAL PROPERTY THAWSLIP_LAYERS)
get_property(libraries GLOBAL PROPERTY THAWSLIP_LIBRARIES)
list(TRANSFORM layers REPLACE "(.+)" "$<TARGET_OBJECTS:thawslip_\\1>" OUTPUT_VARIABLE objects)
add_library(thawslip_whole ${objects})
add_library(thawslip::thawslip ALIAS thawslip_whole)
set_target_properties(thawslip_whole PROPERTIES OUTPUT_NAME thawslip EXPORT_NAME thawslip
                      LINKER_LANGUAGE CXX VERSION ${PROJECT_VERSION} SOVERSION 0.1)
target_compile_features(thawslip_whole PUBLIC cxx_std_20)
target_include_directories(thawslip_whole PUBLIC
    "$<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/src/library/include>"
    "$<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>")
target_link_libraries(thawslip_whole PRIVATE ${libraries} fmt::fmt Threads::Threads)
install(TARGETS thawslip_whole EXPORT thawslip COMPONENT development)
install(EXPORT thawslip NAMESPACE thawslip:: FILE thawslip-targets.cmake
        DESTINATION "${package_folder}" COMPONENT development)
install(DIRECTORY src/library/include/thawslip DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}"
        COMPONENT development FILES_MATCHING PATTERN "*.h")

# For those who build without CMake. Who links a static library links what it uses too.
set(pc_needs "fmt icu-uc icu-i18n harfbuzz harfbuzz-subset libdeflate sqlite3 libpng libjpeg tomlplusplus qrcodegencpp")
if(THAWSLIP_READER)
    string(APPEND pc_needs " zxing")
endif()
set(pc_private "")
set(pc_libraries " -lhpdf -lpthread")
if(BUILD_SHARED_LIBS)
    set(pc_private ".private")
    set(pc_libraries "")
endif()
file(RELATIVE_PATH pc_up "/${CMAKE_INSTALL_LIBDIR}/pkgconfig" "/")
configure_file(src/package/thawslip.pc.in thawslip.pc @ONLY)
install(FILES "${PROJECT_BINARY_DIR}/thawslip.pc" DESTINATION "${CMAKE_INSTALL_LIBDIR}/pkgconfig"
        COMPONENT development)

configure_package_config_file("${CMAKE_CURRENT_LIST_DIR}/thawslip-config.cmake.in"
    "${PROJECT_BINARY_DIR}/thawslip-config.cmake"
    INSTALL_DESTINATION "${package_folder}" PATH_VARS share)
# Before 1.0 any minor version may change what the headers promise.
write_basic_package_version_file("${PROJECT_BINARY_DIR}/thawslip-config-version.cmake"
    COMPATIBILITY SameMinorVersion)
install(FILES "${PROJECT_BINARY_DIR}/thawslip-config.cmake"
              "${PROJECT_BINARY_DIR}/thawslip-config-version.cmake"
        DESTINATION "${package_folder}" COMPONENT development)
