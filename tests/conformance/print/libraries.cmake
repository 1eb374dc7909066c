# These tests run the program and look at what it wrote through Poppler, qpdf and ZXing-C++.
list(APPEND libraries thawslip_test_poppler thawslip::layout thawslip::code thawslip::intake
     ZXing::ZXing)
add_compile_definitions(THAWSLIP_PROGRAM="$<TARGET_FILE:thawslip>")
set(cost 50) # Tesseract reads for a minute: not as the last of the suite
