#include "archive/tables/server/server.h"

namespace thawslip::archive {
namespace {

/// Parameters as PostgreSQL writes them: "?" as the next "$n", "?1" as "$1".
std::string with_dollars(std::string_view sql) {
    std::string written;
    int next = 0;
    for (std::size_t i = 0; i < sql.size(); ++i) {
        const bool numbered = i + 1 < sql.size() && sql[i + 1] >= '0' && sql[i + 1] <= '9';
        if (sql[i] != '?') {
            written += sql[i];
        } else {
            written += '$';
            written += numbered ? "" : std::to_string(++next);
        }
    }
    return written;
}

} // namespace

ServerStatement::ServerStatement(Session& session, const bool& is_writing, std::string_view sql)
    : session_{&session}, is_writing_{&is_writing}, sql_{with_dollars(sql)} {}

void ServerStatement::again() {
    parameters_.clear();
    rows_ = {};
    row_ = 0;
}

bool ServerStatement::next() {
    if (row_ == 0) {
        rows_ = session_->ask(sql_, parameters_);
    }
    return ++row_ <= rows_.size();
}

void ServerStatement::run() {
    *is_writing_ ? session_->post(sql_, parameters_) : void(session_->ask(sql_, parameters_));
    again();
}

void ServerStatement::ahead() {
    session_->ahead(sql_, parameters_);
    again();
}

Value ServerStatement::value(int column) const {
    return row_ == 0 ? Value{} : rows_.at(row_ - 1, static_cast<std::size_t>(column));
}

std::int64_t ServerStatement::integer(int column) const {
    const auto found = value(column);
    const auto* number = std::get_if<std::int64_t>(&found);
    return number != nullptr ? *number : 0;
}

double ServerStatement::real(int column) const {
    const auto found = value(column);
    const auto* number = std::get_if<double>(&found);
    return number != nullptr ? *number : static_cast<double>(integer(column));
}

std::string ServerStatement::text(int column) const {
    const auto found = value(column);
    const auto* text = std::get_if<std::string_view>(&found);
    return text != nullptr ? std::string{*text} : std::string{};
}

bool ServerStatement::is_nothing(int column) const {
    return std::holds_alternative<std::monostate>(value(column));
}

} // namespace thawslip::archive
