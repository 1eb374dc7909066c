# FreeType measures letters by a road of its own.
pkg_check_modules(FREETYPE REQUIRED IMPORTED_TARGET freetype2)
list(APPEND libraries thawslip::typeset PkgConfig::FREETYPE)
