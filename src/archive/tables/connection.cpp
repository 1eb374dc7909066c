#include "archive/tables/connection.h"

namespace thawslip::archive {

Statement& Connection::statement(std::string_view sql) {
    const auto found = statements_.find(sql);
    if (found != statements_.end()) {
        return found->second.again();
    }
    auto prepared =
        std::visit([sql](auto& engine) { return Statement{engine.prepare(sql)}; }, engine_);
    return statements_.emplace(sql, std::move(prepared)).first->second;
}

const Database& Connection::database() const {
    if (const auto* database = std::get_if<Database>(&engine_)) {
        return *database;
    }
    throw ArchiveFailure{{ArchiveFault::Kind::Failed, place() + " is no file"}};
}

const std::string& Connection::place() const {
    const auto* database = std::get_if<Database>(&engine_);
    return database != nullptr ? database->path() : std::get<Server>(engine_).place();
}

void Connection::rest() noexcept {
    last_rows_.clear();
    for (auto& [sql, statement] : statements_) {
        statement.again();
    }
}

void Connection::begin(For what) {
    last_rows_.clear();
    if (auto* database = std::get_if<Database>(&engine_)) {
        // The write lock at once, so that two programs never find out half-way.
        database->run(what == For::Writing ? "BEGIN IMMEDIATE" : "BEGIN");
    } else {
        auto& server = std::get<Server>(engine_);
        what == For::Writing ? server.begin_writing() : server.begin_reading();
    }
}

void Connection::commit() {
    if (auto* database = std::get_if<Database>(&engine_)) {
        database->run("COMMIT");
    } else {
        std::get<Server>(engine_).commit();
    }
}

void Connection::roll_back() noexcept {
    rest();
    try {
        if (auto* database = std::get_if<Database>(&engine_)) {
            database->run("ROLLBACK");
        } else {
            std::get<Server>(engine_).roll_back();
        }
    } catch (const ArchiveFailure&) {
        // The engine has taken everything back by itself, or will when it finds us gone.
        return;
    }
}

std::int64_t Connection::next_row(std::string_view last) {
    const auto [known, is_new] = last_rows_.try_emplace(last);
    if (is_new) {
        auto& row = statement(last);
        row.next();
        known->second = row.integer(0);
        row.again();
    }
    return ++known->second;
}

} // namespace thawslip::archive
