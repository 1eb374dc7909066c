# zlib unpacks what another library packed.
pkg_check_modules(ZLIB REQUIRED IMPORTED_TARGET zlib)
list(APPEND libraries PkgConfig::ZLIB)
list(APPEND alone page_content_test.cpp pdf_test.cpp)
