# `cpack` in a build tree makes two Debian packages: thawslip, and libthawslip-dev for C++.
set(CPACK_GENERATOR DEB)
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_PACKAGE_CONTACT "${THAWSLIP_MAINTAINER}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
    OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)

# The libraries of the program are found by what it is linked to; the faces by fonts/faces.toml.
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME thawslip)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION text)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS "fonts-clear-sans, fonts-dejavu-core")
set(CPACK_DEBIAN_PROGRAM_PACKAGE_RECOMMENDS "libcups2, libmicrohttpd12") # loaded when needed, not linked
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SUGGESTS "cups, cups-client, libpq5, xdg-utils")
set(CPACK_DEBIAN_PROGRAM_DESCRIPTION
"labels and cards for food frozen in bulk
Whoever cooks for weeks in one day writes one short text file about it. From
that file thawslip prints freezer labels, finishing cards and cook-day
cards, as PDF or straight to the printer.
.
Each label says what it is, how many it feeds, when it was made and by when
it is best, how to thaw it, what is added on cook day, and how hot it must
get. Its QR code carries the same as plain text, readable without a network.
An archive prints lost labels again. All of it can be had on a page in the
browser of the same machine.
.
The rules of the local food authority come first.")

set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libthawslip-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(development libdeflate-dev libfmt-dev libharfbuzz-dev libhpdf-dev libicu-dev libjpeg-dev
    libpng-dev libqrcodegencpp-dev libsqlite3-dev libtomlplusplus-dev pkg-config)
if(THAWSLIP_READER)
    list(APPEND development libzxingcore-dev)
endif()
list(JOIN development ", " CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SUGGESTS thawslip)
set(CPACK_DEBIAN_DEVELOPMENT_DESCRIPTION
"labels and cards for food frozen in bulk - C++ library
The layers that thawslip is made of, as static libraries with headers and a
CMake package: descriptions of packing days, storage life and thawing
times, words of labels, layout and imposition, QR codes, PDF and SVG.")

# What Debian Policy (12.5, 12.7) wants in every package.
set(changelog "${PROJECT_BINARY_DIR}/changelog.gz")
add_custom_command(OUTPUT "${changelog}"
    COMMAND "${GZIP}" -9nc "${CMAKE_CURRENT_LIST_DIR}/changelog" > "${changelog}"
    DEPENDS "${CMAKE_CURRENT_LIST_DIR}/changelog" VERBATIM)
add_custom_target(changelog ALL DEPENDS "${changelog}")
install(FILES "${CMAKE_CURRENT_LIST_DIR}/copyright" "${changelog}"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/thawslip" COMPONENT program)
install(FILES "${CMAKE_CURRENT_LIST_DIR}/copyright" "${changelog}"
        DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/libthawslip-dev" COMPONENT development)

include(CPack)
