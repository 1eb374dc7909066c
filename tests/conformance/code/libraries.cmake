pkg_check_modules(qrcodegen REQUIRED IMPORTED_TARGET qrcodegencpp)
pkg_check_modules(zbar REQUIRED IMPORTED_TARGET zbar)
list(APPEND libraries PkgConfig::qrcodegen PkgConfig::zbar ZXing::ZXing)
