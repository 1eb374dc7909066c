#include "http/certificate.h"

#include "http/libgnutls.h"

#include <arpa/inet.h>
#include <array>
#include <ctime>
#include <fmt/format.h>
#include <optional>

namespace thawslip::http {
namespace {

constexpr std::int64_t day = std::int64_t{24} * 60 * 60;
constexpr const char* not_here = "encryption needs GnuTLS, which is not installed here";

constexpr unsigned address_size = 4;
using Address = std::array<unsigned char, address_size>;

std::optional<Address> bytes_of(const std::string& text) {
    Address bytes{};
    return inet_pton(AF_INET, text.c_str(), bytes.data()) == 1 ? std::optional{bytes}
                                                               : std::nullopt;
}

/// A key and a certificate, whatever is in them.
struct Pair {
    const LibGnutls& library;
    gnutls_x509_privkey_t key = nullptr;
    gnutls_x509_crt_t certificate = nullptr;

    explicit Pair(const LibGnutls& functions) : library{functions} {
        library.gnutls_x509_privkey_init(&key);
        library.gnutls_x509_crt_init(&certificate);
    }
    Pair(const Pair&) = delete;
    Pair& operator=(const Pair&) = delete;
    ~Pair() {
        library.gnutls_x509_crt_deinit(certificate);
        library.gnutls_x509_privkey_deinit(key);
    }
};

int make_key(Pair& pair) {
    return pair.library.gnutls_x509_privkey_generate(
        pair.key, GNUTLS_PK_ECDSA, GNUTLS_CURVE_TO_BITS(GNUTLS_ECC_CURVE_SECP256R1), 0);
}

/// What it says: whose it is, until when, and for what alone. \returns below 0 where something
/// fails
int describe(Pair& pair, const Address& address, std::int64_t now) {
    const auto& lib = pair.library;
    auto* one = pair.certificate;
    const auto serial = htonl(static_cast<std::uint32_t>(now) & 0x7FFF'FFFFU);
    constexpr unsigned version = 3;
    const std::array done = {
        lib.gnutls_x509_crt_set_version(one, version),
        lib.gnutls_x509_crt_set_serial(one, &serial, sizeof serial),
        lib.gnutls_x509_crt_set_activation_time(one, static_cast<std::time_t>(now - day)),
        lib.gnutls_x509_crt_set_expiration_time(
            one, static_cast<std::time_t>(now + certificate_days * day)),
        lib.gnutls_x509_crt_set_dn(one, "CN=Thawslip", nullptr),
        lib.gnutls_x509_crt_set_subject_alt_name(one, GNUTLS_SAN_IPADDRESS, address.data(),
                                                 address_size, GNUTLS_FSAN_SET),
        lib.gnutls_x509_crt_set_basic_constraints(one, 0, -1),
        lib.gnutls_x509_crt_set_key_usage(one, GNUTLS_KEY_DIGITAL_SIGNATURE),
        lib.gnutls_x509_crt_set_key_purpose_oid(one, GNUTLS_KP_TLS_WWW_SERVER, 0),
        lib.gnutls_x509_crt_set_key(one, pair.key),
        lib.gnutls_x509_crt_sign2(one, one, pair.key, GNUTLS_DIG_SHA256, 0)};
    for (const int each : done) {
        if (each < 0) {
            return each;
        }
    }
    return 0;
}

/// Both, one after the other: readers of PEM look for what they need (RFC 7468, section 2).
std::string pem_of(const Pair& pair) {
    constexpr std::size_t enough = 4096;
    std::string key(enough, '\0');
    std::string certificate(enough, '\0');
    auto key_size = enough;
    auto certificate_size = enough;
    const bool whole =
        pair.library.gnutls_x509_privkey_export(pair.key, GNUTLS_X509_FMT_PEM, key.data(),
                                                &key_size) == 0 &&
        pair.library.gnutls_x509_crt_export(pair.certificate, GNUTLS_X509_FMT_PEM,
                                            certificate.data(), &certificate_size) == 0;
    return whole ? key.substr(0, key_size) + certificate.substr(0, certificate_size)
                 : std::string{};
}

/// Reads the certificate of a PEM. \returns whether there is one
bool read_into(Pair& pair, std::string pem) {
    const gnutls_datum_t bytes{reinterpret_cast<unsigned char*>(pem.data()),
                               static_cast<unsigned>(pem.size())};
    return pair.library.gnutls_x509_crt_import(pair.certificate, &bytes, GNUTLS_X509_FMT_PEM) == 0;
}

} // namespace

Result<std::string, std::string> make_certificate(const std::string& address, std::int64_t now) {
    const auto* library = libgnutls();
    if (library == nullptr) {
        return Failure{std::string{not_here}};
    }
    const auto bytes = bytes_of(address);
    if (!bytes) {
        return Failure{fmt::format("{} is no address that a certificate could be for", address)};
    }
    Pair pair{*library};
    const int made = make_key(pair);
    const int described = made < 0 ? made : describe(pair, *bytes, now);
    auto pem = described < 0 ? std::string{} : pem_of(pair);
    if (pem.empty()) {
        return Failure{
            fmt::format("cannot make a certificate: {}", library->gnutls_strerror(described))};
    }
    return pem;
}

bool certificate_serves(const std::string& pem, const std::string& address, std::int64_t now) {
    const auto* library = libgnutls();
    const auto bytes = bytes_of(address);
    if (library == nullptr || !bytes) {
        return false;
    }
    Pair pair{*library};
    return read_into(pair, pem) &&
           library->gnutls_x509_crt_check_ip(pair.certificate, bytes->data(), address_size, 0) !=
               0 &&
           library->gnutls_x509_crt_get_expiration_time(pair.certificate) >= now + day;
}

std::string fingerprint(const std::string& pem) {
    const auto* library = libgnutls();
    if (library == nullptr) {
        return {};
    }
    Pair pair{*library};
    std::array<unsigned char, 32> hash{};
    auto size = hash.size();
    const bool is_one =
        read_into(pair, pem) && library->gnutls_x509_crt_get_fingerprint(
                                    pair.certificate, GNUTLS_DIG_SHA256, hash.data(), &size) == 0;
    return is_one ? fmt::format("{:02X}", fmt::join(hash, ":")) : std::string{};
}

} // namespace thawslip::http
