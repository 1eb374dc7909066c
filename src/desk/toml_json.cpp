#include "desk/toml_json.h"

#include "json/value.h"
#include "kitchen/date.h"

#include <variant>

namespace thawslip::desk {
namespace {

struct ToJson {
    json::Json operator()(const toml::Members& members) const {
        auto object = json::Json::object();
        for (const auto& member : members.list) {
            object[member.key] = to_json(member.value);
        }
        return object;
    }
    json::Json operator()(const toml::Array& array) const {
        return json::list_of(array.elements, to_json);
    }
    json::Json operator()(toml::Date date) const { return kitchen::to_iso(date); }
    json::Json operator()(const std::string& text) const { return text; }
    json::Json operator()(std::int64_t number) const { return number; }
    json::Json operator()(double number) const { return number; }
    json::Json operator()(bool flag) const { return flag; }
    json::Json operator()(const toml::OtherTime&) const { return {}; }
    json::Json operator()(const toml::Unreadable&) const { return {}; }
};

} // namespace

json::Json to_json(const toml::Value& value) {
    return std::visit(ToJson{}, value.content);
}

} // namespace thawslip::desk
