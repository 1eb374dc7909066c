#include "desk/phones/phones_text.h"

#include "json/value.h"

namespace thawslip::desk {
namespace {

std::string text_in(const json::Json& object, const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string{};
}

int number_of(const json::Json& object) {
    const auto found = object.find("number");
    return found != object.end() && found->is_number_integer() ? found->get<int>() : 0;
}

} // namespace

std::string phones_text(const std::vector<Phone>& phones) {
    return json::to_lines(json::list_of(phones, [](const Phone& phone) {
        return json::Json{{"number", phone.number},
                          {"name", phone.name},
                          {"key", phone.key},
                          {"paired", phone.paired}};
    }));
}

std::vector<Phone> read_phones(const std::string& text) {
    constexpr std::size_t shortest_key = 32; // less than 128 bits could be guessed
    std::vector<Phone> phones;
    const auto list = json::parsed(text);
    if (!list.is_array()) {
        return phones;
    }
    for (const auto& object : list) {
        Phone phone{number_of(object), phone_name(text_in(object, "name")), text_in(object, "key"),
                    text_in(object, "paired")};
        if (phone.number > 0 && !phone.name.empty() && phone.key.size() >= shortest_key) {
            phones.push_back(std::move(phone));
        }
    }
    return phones;
}

} // namespace thawslip::desk
