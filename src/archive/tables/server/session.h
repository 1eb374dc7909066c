#pragma once

#include "archive/address.h"
#include "archive/tables/server/values.h"

#include <chrono>
#include <memory>
#include <span>
#include <string>

namespace thawslip::archive {

/// How long a server may take: to be reached, to answer once, and for all together.
struct Deadline {
    std::chrono::milliseconds connect = std::chrono::seconds{3};
    std::chrono::milliseconds answer = std::chrono::seconds{10};
    std::chrono::steady_clock::time_point end = std::chrono::steady_clock::time_point::max();
};

/// One connection to a server: statements go out, rows come back. All that is known of libpq.
///
/// No setting of libpq ends every wait (a server that is stopped holds them all), so each wait here
/// has an end of its own; behind it the connection is closed. Nothing is ever sent again by itself:
/// whether a COMMIT whose answer was lost was done, only a key can say (DEVELOPERS.md).
/// Everything throws ArchiveFailure; Away where the server cannot be reached or went away.
class Session {
public:
    /// Reaches the server at once. libpq finds passwords in ~/.pgpass, certificates in
    /// ~/.postgresql.
    Session(const Address& address, const Deadline& deadline);
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;
    ~Session();

    /// Sends what was posted and `sql`, in one round trip, or none where that was asked ahead and
    /// nothing that it is about was changed since. \param sql with $1, $2…
    Rows ask(const std::string& sql, std::span<const Parameter> parameters = {});
    /// Has a question that will be asked sent with what is asked next, so that many need one round
    /// trip. Only where nobody else changes what it is about: in a transaction that has the lock,
    /// or of one moment.
    void ahead(const std::string& sql, std::span<const Parameter> parameters = {});
    /// Has it sent with what is asked next; what fails of it, that throws.
    void post(const std::string& sql, std::span<const Parameter> parameters = {});
    /// Leaves out what was posted and not sent yet, and what was asked ahead.
    void forget_posted();
    void forget_answers();

    /// Waits for a notification of a channel that this session listens at (LISTEN), no longer than
    /// `patience`. \returns whether there was one, or several
    bool hears(std::chrono::milliseconds patience);

    const std::string& place() const;

private:
    struct Wire;
    std::unique_ptr<Wire> wire_;
};

} // namespace thawslip::archive
