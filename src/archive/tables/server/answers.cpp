#include "archive/tables/server/answers.h"

#include <array>

namespace thawslip::archive {
namespace {

bool is_of_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
}

/// The table that is written to; empty: none.
std::string_view table_of(std::string_view change) {
    constexpr std::array<std::string_view, 3> starts = {"INSERT INTO ", "UPDATE ", "DELETE FROM "};
    for (const auto start : starts) {
        if (change.starts_with(start)) {
            change.remove_prefix(start.size());
            return change.substr(0, change.find(' '));
        }
    }
    return {};
}

} // namespace

bool is_about(std::string_view question, std::string_view change) {
    const auto table = table_of(change);
    if (table.empty()) {
        return false;
    }
    for (auto at = question.find(table); at != std::string_view::npos;
         at = question.find(table, at + 1)) {
        const auto end = at + table.size();
        if ((at == 0 || !is_of_word(question[at - 1])) &&
            (end == question.size() || !is_of_word(question[end]))) {
            return true;
        }
    }
    return false;
}

std::optional<Rows> Answers::take(const Asked& asked) {
    const auto found = known_.find(asked);
    if (found == known_.end()) {
        return std::nullopt;
    }
    auto rows = std::move(found->second);
    known_.erase(found);
    return rows;
}

void Answers::forget_changed(std::string_view change) {
    std::erase_if(known_, [change](const auto& one) { return is_about(one.first.first, change); });
}

} // namespace thawslip::archive
