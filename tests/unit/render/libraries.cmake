# zlib unpacks what another library packed.
pkg_check_modules(ZLIB REQUIRED IMPORTED_TARGET zlib)
list(APPEND libraries PkgConfig::ZLIB)
