#pragma once

// ZXing-C++ 1.4 gives a text as std::string only when it is told so before its header.
#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>
