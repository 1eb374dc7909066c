#include "desk/edits.h"

#include "base/list.h"
#include "desk/body.h"
#include "json/value.h"
#include "kitchen/date.h"

#include <algorithm>
#include <limits>

namespace thawslip::desk {
namespace {

toml::Value value_of(const json::Json& json);

toml::Content number_content(const json::Json& json) {
    const bool is_too_large =
        json.is_number_unsigned() &&
        json.get<std::uint64_t>() >
            static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max());
    if (is_too_large) {
        throw BadRequest{"a number is too large"};
    }
    return json.is_number_float() ? toml::Content{json.get<double>()}
                                  : toml::Content{json.get<std::int64_t>()};
}

/// A date is an object of its own kind, for JSON has none.
toml::Content object_content(const json::Json& json) {
    if (json.size() == 1 && json.contains("date")) {
        const auto date = kitchen::parse_iso(needed_text(json, "date"));
        if (!date) {
            throw BadRequest{"a date is to be a day of the calendar, as 2026-10-17"};
        }
        return *date;
    }
    toml::Members members;
    for (const auto& [key, value] : json.items()) {
        members.list.push_back({key, {}, value_of(value)});
    }
    return members;
}

toml::Content list_content(const json::Json& json) {
    return toml::Array{mapped(json, value_of)};
}

toml::Value value_of(const json::Json& json) {
    if (json.is_string()) {
        return {json.get<std::string>(), {}};
    }
    if (json.is_boolean()) {
        return {json.get<bool>(), {}};
    }
    if (json.is_number()) {
        return {number_content(json), {}};
    }
    if (json.is_array()) {
        return {list_content(json), {}};
    }
    if (json.is_object()) {
        return {object_content(json), {}};
    }
    throw BadRequest{"null stands for a key that is taken out, and in no value"};
}

toml::Edit edit_of(const json::Json& json) {
    using What = toml::Edit::What;
    if (!json.is_object()) {
        throw BadRequest{"an edit is to be an object"};
    }
    toml::Edit edit;
    edit.path = KeyPath{needed_text(json, "path")};
    if (json.contains("value")) {
        const bool is_set = !json["value"].is_null();
        edit.what = is_set ? What::Set : What::TakeOut;
        edit.value = is_set ? value_of(json["value"]) : toml::Value{};
    } else if (json.contains("add")) {
        edit.what = What::Add;
        edit.value = value_of(json["add"]);
    } else if (flag_at(json, "remove")) {
        edit.what = What::Remove;
    } else if (flag_at(json, "copy")) {
        edit.what = What::Copy;
    } else {
        edit.what = What::Move;
        edit.by = needed_number(json, "move");
    }
    return edit;
}

/// How many UTF-16 code units a text has: two for what has four bytes in UTF-8.
std::size_t utf16_units(std::string_view text) {
    std::size_t units = 0;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        units += (byte & 0xC0U) == 0x80U ? 0U : byte >= 0xF0U ? 2U : 1U;
    }
    return units;
}

} // namespace

std::vector<toml::Edit> edits_at(const json::Json& body) {
    constexpr std::size_t most = 100; // in one request
    const auto found = body.find("edits");
    if (found == body.end() || !found->is_array() || found->size() > most) {
        throw BadRequest{"\"edits\" is to be a list of edits"};
    }
    return mapped(*found, edit_of);
}

json::Json changes_json(const std::vector<toml::Change>& changes, std::string text) {
    auto list = json::Json::array();
    for (const auto& [offset, length, words] : changes) {
        const std::string_view whole{text};
        list.push_back({{"offset", utf16_units(whole.substr(0, offset))},
                        {"length", utf16_units(whole.substr(offset, length))},
                        {"text", words}});
        text.replace(offset, length, words);
    }
    return list;
}

} // namespace thawslip::desk
