# libical reads our calendars back: Debian package libical-dev, for this test alone.
pkg_check_modules(LIBICAL REQUIRED IMPORTED_TARGET libical)
list(APPEND libraries thawslip::kitchen PkgConfig::LIBICAL)
