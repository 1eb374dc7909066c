# The TOML community's own test suite, as Debian ships it inside a Go library's source.
list(APPEND libraries thawslip::intake thawslip::kitchen)
add_compile_definitions(THAWSLIP_TOML_SUITE="/usr/share/gocode/src/github.com/BurntSushi/toml/internal/toml-test/tests")
