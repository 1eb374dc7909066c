#include "desk/body.h"

#include <limits>

namespace thawslip::desk {
namespace {

constexpr int deepest = 16; // brackets inside brackets: our page needs four

bool is_too_deep(const std::string& text) {
    int depth = 0;
    for (const char c : text) {
        depth += c == '[' || c == '{' ? 1 : 0;
        depth -= c == ']' || c == '}' ? 1 : 0;
        if (depth > deepest) {
            return true; // brackets in texts count too, unless they are closed: few texts have so
                         // many
        }
    }
    return false;
}

[[noreturn]] void refuse_type(const char* key, const char* wanted) {
    throw BadRequest{std::string{"\""} + key + "\" is to be " + wanted};
}

const json::Json* found(const json::Json& object, const char* key) {
    const auto at = object.find(key);
    return at == object.end() || at->is_null() ? nullptr : &*at;
}

} // namespace

json::Json body_of(const http::Request& request) {
    auto body = is_too_deep(request.body) ? json::Json{} : json::parsed(request.body);
    if (!body.is_object()) {
        throw BadRequest{"the body is to be an object in JSON"};
    }
    return body;
}

std::optional<std::string> text_at(const json::Json& object, const char* key) {
    const auto* value = found(object, key);
    if (value != nullptr && !value->is_string()) {
        refuse_type(key, "a text");
    }
    return value == nullptr ? std::nullopt : std::optional{value->get<std::string>()};
}

std::optional<int> number_at(const json::Json& object, const char* key) {
    const auto* value = found(object, key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (!value->is_number_integer() ||
        value->get<std::int64_t>() < std::numeric_limits<int>::min() ||
        value->get<std::int64_t>() > std::numeric_limits<int>::max()) {
        refuse_type(key, "a whole number");
    }
    return value->get<int>();
}

bool flag_at(const json::Json& object, const char* key, bool otherwise) {
    const auto* value = found(object, key);
    if (value != nullptr && !value->is_boolean()) {
        refuse_type(key, "true or false");
    }
    return value == nullptr ? otherwise : value->get<bool>();
}

std::vector<std::string> texts_at(const json::Json& object, const char* key) {
    std::vector<std::string> texts;
    const auto* value = found(object, key);
    if (value != nullptr && !value->is_array()) {
        refuse_type(key, "a list of texts");
    }
    for (const auto& one : value == nullptr ? json::Json::array() : *value) {
        if (!one.is_string()) {
            refuse_type(key, "a list of texts");
        }
        texts.push_back(one.get<std::string>());
    }
    return texts;
}

std::string needed_text(const json::Json& object, const char* key) {
    auto text = text_at(object, key);
    if (!text) {
        refuse_type(key, "a text");
    }
    return *std::move(text);
}

int needed_number(const json::Json& object, const char* key) {
    const auto number = number_at(object, key);
    if (!number) {
        refuse_type(key, "a whole number");
    }
    return *number;
}

} // namespace thawslip::desk
