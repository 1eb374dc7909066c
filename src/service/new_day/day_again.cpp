#include "service/new_day/day_again.h"

#include "base/letters.h"
#include "toml/document.h"
#include "toml/edit.h"

#include <algorithm>
#include <fmt/format.h>
#include <vector>

namespace thawslip::service {
namespace {

std::vector<toml::Edit> edits_for(const toml::Value& root, kitchen::Date made) {
    std::vector<toml::Edit> edits{{toml::Edit::What::Set, KeyPath{"day.made"}, {made, {}}}};
    const auto* day = toml::member(root, "day");
    const auto* prepared = day == nullptr ? nullptr : toml::member(*day, "prepared");
    if (prepared != nullptr && std::holds_alternative<toml::Date>(prepared->content)) {
        edits.push_back({toml::Edit::What::TakeOut, KeyPath{"day.prepared"}});
    }
    const auto* packages = toml::member(root, "package");
    const auto* list = packages == nullptr ? nullptr : std::get_if<toml::Array>(&packages->content);
    for (std::size_t i = 0; list != nullptr && i < list->elements.size(); ++i) {
        const auto package = KeyPath{"package"}.index(i);
        edits.push_back({toml::Edit::What::TakeOut, package.key("use_by")});
        edits.push_back({toml::Edit::What::TakeOut, package.key("made")});
    }
    return edits;
}

bool may_stand_in_name(char c) {
    return is_of_word(c) || c == '-' || c == '_';
}

/// Words as a name: what no folder takes, and blanks, become dashes.
std::string name_of_words(const std::string& words) {
    constexpr std::size_t longest = 60;
    std::string name;
    for (const char c : words) {
        name += may_stand_in_name(c) ? c : '-';
    }
    name.erase(0, std::min(name.find_first_not_of('-'), name.size()));
    auto end = std::min(name.size(), longest);
    while (end > 0 && end < name.size() &&
           (static_cast<unsigned char>(name[end]) & 0xC0U) == 0x80U) {
        --end; // no half of a character
    }
    return name.substr(0, end);
}

} // namespace

Result<std::string, std::string> day_again(const std::string& text, kitchen::Date made) {
    Diagnostics faults;
    const auto document = toml::parse(text, "", faults);
    auto edited = toml::edit(text, edits_for(document.root(), made));
    if (!edited) {
        return Failure{edited.fault()};
    }
    return edited.value().text;
}

std::string day_file_name(kitchen::Date made, const std::string& words, int number) {
    auto name = name_of_words(words);
    if (name.empty()) {
        name = kitchen::to_iso(made);
    }
    if (number > 1) {
        name += fmt::format("-{}", number);
    }
    return name + (name.ends_with("day") ? ".toml" : "-day.toml");
}

} // namespace thawslip::service
