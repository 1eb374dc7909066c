# zlib unpacks what another library packed.
pkg_check_modules(ZLIB REQUIRED IMPORTED_TARGET zlib)
list(APPEND libraries PkgConfig::ZLIB)
# Cuts characters out of faces, as lesser faces lack them.
list(APPEND libraries PkgConfig::HARFBUZZ)
