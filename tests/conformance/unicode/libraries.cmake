# ICU's own transforms are what the folds are held against.
pkg_check_modules(ICU REQUIRED IMPORTED_TARGET icu-uc icu-i18n)
list(APPEND libraries thawslip::unicode PkgConfig::ICU)
list(APPEND libraries thawslip::kitchen thawslip::wording) # read fractions, set capitals
