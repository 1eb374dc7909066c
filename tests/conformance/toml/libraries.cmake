# The TOML community's own test suite, as Debian ships it inside a Go library's source; and toml++,
# which our own reading is compared with.
pkg_check_modules(TOMLPLUSPLUS REQUIRED IMPORTED_TARGET tomlplusplus)
list(APPEND libraries thawslip::intake thawslip::kitchen PkgConfig::TOMLPLUSPLUS)
add_compile_definitions(THAWSLIP_TOML_SUITE="/usr/share/gocode/src/github.com/BurntSushi/toml/internal/toml-test/tests")
