#include "archive/changes.h"

#include "archive/address.h"
#include "archive/tables/database.h"
#include "archive/tables/server/server.h"

#include <fmt/format.h>
#include <utility>

namespace thawslip::archive {
namespace {

constexpr int looks_before_letting_go = 40;

/// Rows that are never changed and never deleted: what is there is known by how many there are.
std::string counted_in(const Database& database) {
    auto counts = database.prepare("SELECT (SELECT count(*) FROM bag_event), (SELECT count(*) FROM "
                                   "print_key), (SELECT count(*) FROM day)");
    counts.next();
    return fmt::format("{} {} {}", counts.integer(0), counts.integer(1), counts.integer(2));
}

} // namespace

struct FileChanges::Open {
    /// Whoever writes is not waited for: the next look is soon.
    explicit Open(const std::string& file)
        : database{file, Access::ReadOnly, std::chrono::milliseconds{0}} {}

    Database database;
    std::int64_t version = -1; ///< none that SQLite gives
    int looks = 0;
};

FileChanges::FileChanges(std::string file) : file_{std::move(file)} {}
FileChanges::FileChanges(FileChanges&&) noexcept = default;
FileChanges& FileChanges::operator=(FileChanges&&) noexcept = default;
FileChanges::~FileChanges() = default;

bool FileChanges::look() {
    if (open_ && ++open_->looks > looks_before_letting_go) {
        open_.reset();
        return false;
    }
    try {
        if (!open_) {
            open_ = std::make_unique<Open>(file_);
        }
        const auto version = open_->database.number("PRAGMA data_version");
        if (std::exchange(open_->version, version) == version) {
            return false;
        }
        auto now = counted_in(open_->database);
        const auto before = std::exchange(held_, std::move(now));
        return before && before != held_;
    } catch (const ArchiveFailure&) { // not there yet, or somebody has it for itself
        open_.reset();
        held_ = held_.value_or(std::string{});
        return false;
    }
}

void FileChanges::let_go() {
    open_.reset();
}

struct ServerChanges::Listening {
    Server server;
};

ServerChanges::ServerChanges(std::unique_ptr<Listening> listening)
    : listening_{std::move(listening)} {}
ServerChanges::ServerChanges(ServerChanges&&) noexcept = default;
ServerChanges& ServerChanges::operator=(ServerChanges&&) noexcept = default;
ServerChanges::~ServerChanges() = default;

Result<ServerChanges, ArchiveFault> ServerChanges::listen(const std::string& address,
                                                          std::chrono::milliseconds budget) {
    const auto read = parse_address(address);
    if (!read) {
        return Failure{ArchiveFault{ArchiveFault::Kind::CannotOpen, read.fault()}};
    }
    try {
        auto listening =
            std::make_unique<Listening>(Listening{Server{read.value(), {budget, budget}}});
        auto& session = listening->server.session();
        const auto channel = session.ask("SELECT thawslip.channel_here()");
        session.ask(fmt::format("LISTEN \"{}\"", std::get<std::string_view>(channel.at(0, 0))));
        return ServerChanges{std::move(listening)};
    } catch (const ArchiveFailure& failure) {
        return Failure{failure.fault()};
    }
}

bool ServerChanges::hears(std::chrono::milliseconds patience) {
    return listening_->server.session().hears(patience);
}

} // namespace thawslip::archive
