#include "service/new_day/new_day_text.h"

#include "base/split.h"
#include "base/utf8.h"
#include "intake/storage_file.h"
#include "kitchen/foods/food_catalogue.h"
#include "service/archive/toml_text.h"
#include "service/new_day/templates.h"
#include "wording/language.h"
#include "wording/variant.h"

#include <array>
#include <fmt/format.h>
#include <utility>

namespace thawslip::service {
namespace {

constexpr std::size_t remark_column = 38;
constexpr std::size_t line_length = 100;

std::string_view template_of(std::string_view language) {
    return language == "es" ? new_day_es : language == "de" ? new_day_de : new_day_en;
}

void put(std::string& text, std::string_view slot, std::string_view value) {
    if (const auto at = text.find(slot); at != std::string::npos) {
        text.replace(at, slot.size(), value);
    }
}

std::string part_before(std::string_view text, std::string_view mark) {
    return std::string{text.substr(0, text.find(mark))};
}

std::string part_after(std::string_view text, std::string_view mark) {
    return std::string{text.substr(text.find(mark) + mark.size())};
}

/// A line whose remark stands where the others do, as far as there is room.
std::string with_remark_in_column(const std::string& line) {
    const auto hash = line.find(" = ") == std::string::npos && !line.starts_with('[')
                          ? std::string::npos // no key and no header: a remark as a whole
                          : line.find(" #", 1);
    const auto end = hash == std::string::npos ? hash : line.find_last_not_of(' ', hash);
    if (hash == std::string::npos || end == std::string::npos) {
        return line;
    }
    const auto said = line.substr(0, end + 1);
    const auto width = count_code_points(said);
    return said + std::string(width < remark_column ? remark_column - width : 1, ' ') +
           line.substr(hash + 1);
}

/// One key of a block: with the cook's value; where there is none, `example` as a remark.
void put_optional(std::string& line, std::string_view slot, const std::string& value,
                  std::string_view example) {
    if (line.find(slot) != std::string::npos) {
        line = value.empty() ? "# " + line : line;
        put(line, slot, toml_string(value.empty() ? example : value));
    }
}

void put_values(std::string& line, const NewDish& dish) {
    put(line, "@DISH@", toml_string(dish.name));
    put(line, "@SERVINGS@", dish.servings.empty() ? "0" : dish.servings);
    put(line, "@BAGS@", dish.bags.empty() ? "1" : dish.bags);
    put(line, "@FOOD@", toml_string(dish.food));
    put_optional(line, "@WEIGHT@", dish.weight, "2.2 kg");
    put_optional(line, "@THICKNESS@", dish.thickness, "30 mm");
}

template <class Edit>
std::string edited(const std::string& block, Edit edit) {
    std::string text;
    for (auto line : lines_in(block)) {
        edit(line);
        text += with_remark_in_column(line) + "\n";
    }
    return text;
}

/// The kinds as remarks, in lines of at most 100 columns.
std::string remarks_of(const std::vector<std::string>& kinds) {
    std::string text = "#";
    std::size_t column = 1;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        const auto word = kinds[i] + (i + 1 == kinds.size() ? "" : ",");
        if (column + 1 + word.size() > line_length) {
            text += "\n#";
            column = 1;
        }
        text += " " + word;
        column += 1 + word.size();
    }
    return text;
}

} // namespace

std::vector<std::string> freezable_kinds(const std::string& storage_list) {
    const auto table = intake::built_in_storage(storage_list);
    auto kinds = kitchen::all_kinds(table);
    std::erase_if(
        kinds, [&table](const std::string& food) { return !kitchen::find_storage(table, food); });
    return kinds;
}

std::string new_day_text(const NewDay& day, std::string_view language,
                         std::string_view allergen_list, const std::vector<std::string>& kinds) {
    const auto whole =
        wording::said_where(std::string{template_of(language)}, language, allergen_list);
    if (day.dishes.empty()) {
        auto sample = part_before(whole, "@BLANK@\n");
        put(sample, "@TODAY@", kitchen::to_iso(day.made));
        return sample;
    }
    const auto blank = part_after(whole, "@BLANK@\n");
    auto head = part_before(blank, "@BLOCK@\n");
    put(head, "@KINDS@", remarks_of(kinds));
    put(head, "@MADE@", kitchen::to_iso(day.made));
    auto text = edited(head, [&](std::string& line) {
        put_optional(line, "@KITCHEN@", day.kitchen, "Orchard house");
    });
    const auto block = part_after(blank, "@BLOCK@\n");
    const auto& words = wording::shipped_language(language);
    for (std::size_t i = 0; i < day.dishes.size(); ++i) {
        text += edited(block, [&](std::string& line) {
            put(line, "@NUMBER@",
                words.say("new.number",
                          {std::to_string(i + 1), std::to_string(day.dishes.size())}));
            put_values(line, day.dishes[i]);
        });
    }
    return text;
}

} // namespace thawslip::service
