#include "archive/tables/server/sets.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <optional>
#include <string_view>

namespace thawslip::archive {
namespace {

/// Each after all that it refers to (archive/tables/server/schema.cpp).
constexpr std::array<std::string_view, 10> parents_first = {
    "day",   "package",    "bag",       "bag_id",    "bag_event",
    "print", "print_file", "print_day", "print_key", "sheet"};

/// "INSERT INTO table (…) VALUES (…)", and whether what is there already is passed over.
struct Insert {
    std::size_t table = 0; ///< index into `parents_first`
    std::string_view head; ///< up to VALUES
    std::string_view values;
    std::string_view rest;
};

std::optional<Insert> insert_of(std::string_view sql) {
    constexpr std::string_view start = "INSERT INTO ";
    constexpr std::string_view mark = " VALUES (";
    const auto at = sql.find(mark);
    const auto end = sql.rfind(')');
    if (!sql.starts_with(start) || at == std::string_view::npos || end < at + mark.size()) {
        return std::nullopt;
    }
    const auto name = sql.substr(start.size(), sql.find(' ', start.size()) - start.size());
    const auto* const table = std::ranges::find(parents_first, name);
    const auto rest = sql.substr(end + 1);
    if (table == parents_first.end() || !(rest.empty() || rest == " ON CONFLICT DO NOTHING")) {
        return std::nullopt;
    }
    return Insert{static_cast<std::size_t>(table - parents_first.begin()), sql.substr(0, at),
                  sql.substr(at + mark.size(), end - at - mark.size()), rest};
}

std::string array_text(std::string_view text) {
    std::string written = "\"";
    for (const char c : text) {
        written += c == '"' || c == '\\' ? "\\" : "";
        written += c;
    }
    return written + "\"";
}

struct Element {
    std::string operator()(std::monostate) const { return "NULL"; }
    std::string operator()(std::int64_t value) const { return std::to_string(value); }
    std::string operator()(double value) const { return fmt::format("{}", value); }
    std::string operator()(const std::string& value) const { return array_text(value); }
    std::string operator()(const Bytes& value) const {
        std::string hex = "\\x";
        for (const char c : value.bytes) {
            hex += fmt::format("{:02x}", static_cast<unsigned char>(c));
        }
        return array_text(hex);
    }
    std::string operator()(const Array&) const { return "NULL"; } // none of a row's values is one
};

constexpr std::array<Array::Of, 5> types = {Array::Of::Texts, Array::Of::Integers, Array::Of::Reals,
                                            Array::Of::Texts, Array::Of::Bytes};

/// One column of all rows; nothing where they are of several types.
std::optional<Parameter> column_of(const std::vector<Posted>& rows, std::size_t column) {
    std::size_t type = 0;
    std::string written = "{";
    for (const auto& row : rows) {
        const auto& value = row.parameters.at(column);
        if (value.index() != 0 && type != 0 && value.index() != type) {
            return std::nullopt;
        }
        type = value.index() != 0 ? value.index() : type;
        written += (written.size() == 1 ? "" : ",") + std::visit(Element{}, value);
    }
    return type == 0 ? Parameter{} : Parameter{Array{types.at(type), written + "}"}};
}

/// VALUES with each $n called by `names`.
std::string renamed(std::string_view values, const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (values[i] != '$') {
            text += values[i];
            continue;
        }
        std::size_t number = 0;
        while (i + 1 < values.size() && values[i + 1] >= '0' && values[i + 1] <= '9') {
            number = number * 10 + static_cast<std::size_t>(values[++i] - '0');
        }
        text += names.at(number - 1);
    }
    return text;
}

/// All rows by one statement; nothing where that cannot be.
std::optional<Posted> as_set(const std::vector<Posted>& rows) {
    constexpr std::array<std::string_view, 4> arrays = {"BIGINT[]", "DOUBLE PRECISION[]", "TEXT[]",
                                                        "BYTEA[]"};
    const auto insert = insert_of(rows.front().sql);
    Posted set;
    std::vector<std::string> names;
    std::string from;
    std::string columns;
    for (std::size_t i = 0; i < rows.front().parameters.size(); ++i) {
        auto column = column_of(rows, i);
        if (!column) {
            return std::nullopt;
        }
        if (const auto* array = std::get_if<Array>(&*column)) {
            names.push_back(fmt::format("r{}", i));
            from += fmt::format("{}${}::{}", from.empty() ? "" : ", ", set.parameters.size() + 1,
                                arrays.at(static_cast<std::size_t>(array->of)));
            columns += (columns.empty() ? "" : ", ") + names.back();
            set.parameters.push_back(*std::move(column));
        } else {
            names.emplace_back("NULL");
        }
    }
    if (from.empty()) {
        return std::nullopt;
    }
    set.sql = fmt::format("{} SELECT {} FROM unnest({}) AS of_rows ({}){}", insert->head,
                          renamed(insert->values, names), from, columns, insert->rest);
    return set;
}

/// Inserts that follow each other, by the statement that they share.
class Run {
public:
    void add(const Insert& insert, Posted one) {
        constexpr std::size_t most = 1000; // rows at once
        const auto fits = [&](const Group& group) {
            return group.rows.front().sql == one.sql && group.rows.size() < most;
        };
        const auto group = std::ranges::find_if(groups_, fits);
        if (group != groups_.end()) {
            group->rows.push_back(std::move(one));
        } else {
            groups_.push_back({insert.table, {}});
            groups_.back().rows.push_back(std::move(one));
        }
    }

    void end(std::vector<Posted>& sent) {
        std::ranges::stable_sort(groups_, {}, &Group::table);
        for (auto& [table, rows] : groups_) {
            auto set = rows.size() > 1 ? as_set(rows) : std::nullopt;
            if (set) {
                sent.push_back(*std::move(set));
            } else {
                std::ranges::move(rows, std::back_inserter(sent));
            }
        }
        groups_.clear();
    }

private:
    struct Group {
        std::size_t table;
        std::vector<Posted> rows;
    };
    std::vector<Group> groups_;
};

} // namespace

std::vector<Posted> in_sets(std::vector<Posted> posted) {
    std::vector<Posted> sent;
    Run run;
    for (auto& one : posted) {
        if (const auto insert = insert_of(one.sql)) {
            run.add(*insert, std::move(one));
        } else {
            run.end(sent);
            sent.push_back(std::move(one));
        }
    }
    run.end(sent);
    return sent;
}

} // namespace thawslip::archive
