#pragma once

#include "base/loaded_library.h"

#include <gnutls/gnutls.h>
#include <gnutls/x509.h>

namespace thawslip::http {

// Every function of GnuTLS that is used here, for the table below and for filling it.
// clang-format off
#define THAWSLIP_GNUTLS_FUNCTIONS(X) \
    X(gnutls_strerror) X(gnutls_x509_crt_check_ip) X(gnutls_x509_crt_deinit) \
    X(gnutls_x509_crt_export) X(gnutls_x509_crt_get_expiration_time) \
    X(gnutls_x509_crt_get_fingerprint) X(gnutls_x509_crt_import) X(gnutls_x509_crt_init) \
    X(gnutls_x509_crt_set_activation_time) X(gnutls_x509_crt_set_basic_constraints) \
    X(gnutls_x509_crt_set_dn) X(gnutls_x509_crt_set_expiration_time) X(gnutls_x509_crt_set_key) \
    X(gnutls_x509_crt_set_key_purpose_oid) X(gnutls_x509_crt_set_key_usage) \
    X(gnutls_x509_crt_set_serial) X(gnutls_x509_crt_set_subject_alt_name) \
    X(gnutls_x509_crt_set_version) X(gnutls_x509_crt_sign2) X(gnutls_x509_privkey_deinit) \
    X(gnutls_x509_privkey_export) X(gnutls_x509_privkey_generate) X(gnutls_x509_privkey_init)
// clang-format on

/// The functions of GnuTLS, by their own names: libmicrohttpd brings it, and it is loaded as that
/// is (http/libmicrohttpd.h).
struct LibGnutls {
    THAWSLIP_GNUTLS_FUNCTIONS(THAWSLIP_MEMBER)
};

/// Loaded at the first call, for good. \returns nullptr where this system has no GnuTLS
const LibGnutls* libgnutls();

} // namespace thawslip::http
