#pragma once

#include "base/loaded_library.h"

#include <microhttpd.h>

namespace thawslip::http {

// Every function of libmicrohttpd that is used here, for the table below and for filling it.
// clang-format off
#define THAWSLIP_MHD_FUNCTIONS(X) \
    X(MHD_add_response_header) X(MHD_create_response_from_buffer) \
    X(MHD_create_response_from_callback) X(MHD_destroy_response) \
    X(MHD_get_connection_info) X(MHD_get_connection_values_n) X(MHD_queue_response) \
    X(MHD_start_daemon) X(MHD_stop_daemon)
// clang-format on

/// The functions of libmicrohttpd, by their own names. The library is loaded when a server starts
/// and not with the program: it brings TLS and eight further libraries, and most runs serve
/// nothing.
struct LibMicrohttpd {
    THAWSLIP_MHD_FUNCTIONS(THAWSLIP_MEMBER)
};

/// Loaded at the first call, for good. \returns nullptr where this system has no libmicrohttpd
const LibMicrohttpd* libmicrohttpd();

} // namespace thawslip::http
