# Poppler, MuPDF, Ghostscript, qpdf and librsvg look at what was drawn; FreeType and HarfBuzz draw
# and measure the same by a road of their own.
pkg_check_modules(FREETYPE REQUIRED IMPORTED_TARGET freetype2)
pkg_check_modules(HARFBUZZ REQUIRED IMPORTED_TARGET harfbuzz)
pkg_check_modules(LIBPNG REQUIRED IMPORTED_TARGET libpng)
list(APPEND libraries thawslip_test_poppler PkgConfig::FREETYPE PkgConfig::HARFBUZZ
     PkgConfig::LIBPNG)
