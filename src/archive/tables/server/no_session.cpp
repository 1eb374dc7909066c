#include "archive/fault.h"
#include "archive/tables/server/session.h"

#include <fmt/format.h>

namespace thawslip::archive {

struct Session::Wire {
    std::string place;
};

Session::Session(const Address& address, const Deadline& /*deadline*/) {
    throw ArchiveFailure{
        {ArchiveFault::Kind::CannotOpen,
         fmt::format("cannot open the archive {}: this thawslip was built without PostgreSQL; "
                     "expected a file",
                     address.shown)}};
}

Session::~Session() = default;

Rows Session::ask(const std::string& /*sql*/, std::span<const Parameter> /*parameters*/) {
    return {};
}

void Session::ahead(const std::string& /*sql*/, std::span<const Parameter> /*parameters*/) {}

void Session::post(const std::string& /*sql*/, std::span<const Parameter> /*parameters*/) {}

void Session::forget_posted() {}

void Session::forget_answers() {}

bool Session::hears(std::chrono::milliseconds /*patience*/) {
    return false;
}

const std::string& Session::place() const {
    return wire_->place;
}

} // namespace thawslip::archive
