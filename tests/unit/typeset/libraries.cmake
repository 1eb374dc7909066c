# FreeType rasterises glyphs by a road of its own.
pkg_check_modules(FREETYPE REQUIRED IMPORTED_TARGET freetype2)
list(APPEND libraries PkgConfig::FREETYPE Threads::Threads)
# Cuts characters out of faces, as lesser faces lack them.
list(APPEND libraries PkgConfig::HARFBUZZ)
