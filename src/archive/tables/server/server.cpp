#include "archive/tables/server/server.h"

#include "archive/fault.h"
#include "archive/tables/server/schema.h"

#include <array>
#include <fmt/format.h>

namespace thawslip::archive {
namespace {

using Kind = ArchiveFault::Kind;

[[noreturn]] void refuse_server(Kind kind, std::string message) {
    throw ArchiveFailure{{kind, std::move(message)}};
}

std::string milliseconds(std::chrono::milliseconds time) {
    return fmt::format("{}ms", time.count());
}

std::int64_t number_in(const Value& value) {
    const auto* number = std::get_if<std::int64_t>(&value);
    return number != nullptr ? *number : 0;
}

void require_schema(std::int64_t version, const std::string& place) {
    const auto known = server_schema();
    if (version > known) {
        refuse_server(Kind::NewerSchema,
                      fmt::format("the archive {} was made by a later thawslip: its schema is {}, "
                                  "this program knows {}; nothing was changed",
                                  place, version, known));
    }
    if (version < known) {
        refuse_server(
            Kind::Missing,
            fmt::format("the archive {} is of schema {}, this program needs {}: who keeps "
                        "the server leads it forward with what `thawslip archive sql` "
                        "prints",
                        place, version, known));
    }
}

/// Where nothing holds a session to its kitchen, every query would see all of them.
void require_kitchen(const Rows& facts, const Address& address) {
    if (number_in(facts.at(0, 2)) == 0) {
        refuse_server(
            Kind::CannotOpen,
            fmt::format("cannot open the archive {}: this login may do all at the server, "
                        "and would see every kitchen; expected a login that is a member "
                        "of one",
                        address.shown));
    }
    if (std::holds_alternative<std::monostate>(facts.at(0, 1))) {
        refuse_server(
            Kind::Missing,
            address.kitchen.empty()
                ? fmt::format("which kitchen of {} is not known: this login is a member of none or "
                              "of several; expected kitchen=NAME behind a ? in the address",
                              address.shown)
                : fmt::format("this login is no member of a kitchen \"{}\" at {}", address.kitchen,
                              address.shown));
    }
}

Rows entered(Session& session, const Address& address, const Deadline& deadline) {
    const std::array<Parameter, 1> wait{milliseconds(deadline.answer)};
    // Each question is about one kitchen, so an index leads to it; a plan that was made while the
    // tables were empty would be kept when they no longer are. To make one for each new value, or
    // to compile one, takes longer than to use it.
    session.post("SELECT set_config('search_path', 'thawslip', false), set_config('lock_timeout', "
                 "$1, false), set_config('statement_timeout', $1, false), "
                 "set_config('enable_seqscan', 'off', false), set_config('jit', 'off', false), "
                 "set_config('plan_cache_mode', 'force_generic_plan', false)",
                 wait);
    const std::array<Parameter, 1> kitchen{address.kitchen};
    try {
        return session.ask("SELECT version, thawslip.enter($1), "
                           "row_security_active('thawslip.bag'::regclass) FROM thawslip.about",
                           kitchen);
    } catch (const ArchiveFailure& failure) {
        if (failure.fault().kind != Kind::ReadOnly) {
            throw;
        }
        refuse_server(
            Kind::CannotOpen,
            fmt::format("cannot open the archive {}: this login is no member of a kitchen "
                        "there",
                        address.shown));
    }
}

} // namespace

Server::Server(const Address& address, const Deadline& deadline)
    : session_{std::make_unique<Session>(address, deadline)}, is_writing_{
                                                                  std::make_unique<bool>(false)} {
    const auto facts = entered(*session_, address, deadline);
    require_schema(number_in(facts.at(0, 0)), address.shown);
    require_kitchen(facts, address);
}

void Server::begin_reading() {
    session_->forget_answers();
    session_->post("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY");
}

void Server::begin_writing() {
    // Each statement after the lock sees what the writer before has committed: with the kitchen's
    // row held, READ COMMITTED is enough, and nothing has to be tried again.
    session_->forget_answers();
    session_->post("BEGIN ISOLATION LEVEL READ COMMITTED");
    const auto locked = session_->ask("SELECT thawslip.lock_kitchen()");
    if (std::holds_alternative<std::monostate>(locked.at(0, 0))) {
        roll_back();
        refuse_server(Kind::ReadOnly,
                      fmt::format("the archive {} may not be written by you: this login may only "
                                  "read it",
                                  place()));
    }
    *is_writing_ = true;
}

void Server::commit() {
    *is_writing_ = false;
    session_->forget_answers();
    const auto done = session_->ask("COMMIT");
    // After an error COMMIT takes back, and does not call that one.
    if (done.at(0, 0) != Value{std::string_view{"COMMIT"}}) {
        refuse_server(Kind::Failed, fmt::format("the archive {} took the change back", place()));
    }
}

void Server::roll_back() {
    *is_writing_ = false;
    session_->forget_posted();
    session_->ask("ROLLBACK");
}

} // namespace thawslip::archive
