# These tests run the program and look at what it wrote through Poppler, qpdf and ZXing-C++.
find_package(ZXing REQUIRED)
list(APPEND libraries thawslip::layout thawslip::code thawslip::intake ZXing::ZXing)
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
