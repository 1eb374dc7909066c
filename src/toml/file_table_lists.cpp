// The questions of a Table that are answered by a list or by other tables.

#include "toml/faults.h"
#include "toml/file_table.h"
#include "toml/type_hints.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

std::string element_name(const Key& key, std::size_t position) {
    return fmt::format("{}[{}]", key.name, position + 1);
}

} // namespace

void Table::refuse_count(const Key& key, std::size_t count, std::size_t most) {
    reader_->error(path_of(key),
                   fmt::format("{} has {} entries, at most {} are taken", key.name, count, most));
}

/// The list under `key`, reported if it is none or too long.
const Value* Table::ask_list(const Key& key, std::size_t most) {
    const auto* value = ask_for<Array>(key, expected_list);
    const auto count = value != nullptr ? std::get<Array>(value->content).elements.size() : 0;
    if (count > most) {
        refuse_count(key, count, most);
        return nullptr;
    }
    return value;
}

std::vector<Text> Table::strings(const Key& key, std::size_t most) {
    std::vector<Text> texts;
    const auto* list = ask_list(key, most);
    if (list == nullptr) {
        return texts;
    }
    const auto& elements = std::get<Array>(list->content).elements;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const auto where = path_of(key).index(i);
        if (const auto* text = std::get_if<std::string>(&elements[i].content)) {
            texts.push_back({*text, where});
        } else {
            reader_->error_at(elements[i].place, where,
                              wrong_type(element_name(key, i), expected_text, elements[i]));
        }
    }
    return texts;
}

std::vector<Text> Table::string_or_strings(const Key& key, std::size_t most) {
    const auto* value = ask(key);
    if (value != nullptr && std::holds_alternative<std::string>(value->content)) {
        return {Text{std::get<std::string>(value->content), path_of(key)}};
    }
    if (value != nullptr && !std::holds_alternative<Array>(value->content)) {
        refuse_type(key, expected_text_or_list, *value);
        return {};
    }
    return strings(key, most);
}

std::vector<WordAt> Table::one_or_several(const Key& key, std::size_t most, std::string_view what,
                                          std::span<const Word> words) {
    std::vector<WordAt> found;
    const auto errors = reader_->errors();
    const auto texts = string_or_strings(key, most);
    for (const auto& text : texts) {
        if (const auto at = position(text, what, words)) {
            found.push_back({*at, text.key});
        }
    }
    if (texts.empty() && has(key) && reader_->errors() == errors) {
        reader_->error(path_of(key), fmt::format("{} is an empty list", key.name),
                       {fmt::format("write, for example, {} = {}", key.name, key.example)});
    }
    return found;
}

std::vector<std::string> Table::lines(const Key& key, std::size_t most,
                                      std::size_t most_characters) {
    std::vector<std::string> clean;
    for (const auto& text : strings(key, most)) {
        if (auto line = printable_line(*reader_, text, most_characters)) {
            clean.push_back(std::move(*line));
        }
    }
    return clean;
}

std::vector<double> Table::reals(const Key& key, std::size_t most, Range<double> range) {
    std::vector<double> numbers;
    const auto* list = ask_list(key, most);
    if (list == nullptr) {
        return numbers;
    }
    const auto& elements = std::get<Array>(list->content).elements;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const auto name = element_name(key, i);
        const auto number = as_real(elements[i]);
        if (!number) {
            reader_->error_at(elements[i].place, path_of(key).index(i),
                              wrong_type(name, expected_real, elements[i]));
        } else if (within(elements[i], path_of(key).index(i), name, *number, range)) {
            numbers.push_back(*number);
        }
    }
    return numbers;
}

std::optional<Table> Table::table(const Key& key) {
    const auto* value = ask(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (std::holds_alternative<Members>(value->content)) {
        return Table{*reader_, path_of(key), *value};
    }
    const auto header = header_of(path_of(key).text());
    refuse_type(key, "a table", *value, {fmt::format("write {} once", header)});
    const auto* array = std::get_if<Array>(&value->content);
    const bool of_tables = array != nullptr && !array->elements.empty() &&
                           std::holds_alternative<Members>(array->elements.front().content);
    if (!of_tables) {
        return std::nullopt;
    }
    return Table{*reader_, path_of(key).index(0), array->elements.front()}; // check it all the same
}

std::vector<Table> Table::tables(const Key& key, std::size_t most) {
    const auto* value = ask(key);
    if (value == nullptr) {
        return {};
    }
    const auto header = header_of(path_of(key).index(0).text());
    if (std::holds_alternative<Members>(value->content)) {
        reader_->error_at(value->place, path_of(key),
                          fmt::format("{} must be written {}: there may be several",
                                      header_of(path_of(key).text()), header));
        return {Table{*reader_, path_of(key), *value}}; // its keys are checked all the same
    }
    const auto* array = std::get_if<Array>(&value->content);
    if (array == nullptr) {
        refuse_type(key, "tables " + header, *value);
        return {};
    }
    if (array->elements.size() > most) {
        refuse_count(key, array->elements.size(), most);
    }
    std::vector<Table> tables;
    for (std::size_t i = 0; i < std::min(array->elements.size(), most); ++i) {
        const auto& element = array->elements[i];
        if (std::holds_alternative<Members>(element.content)) {
            tables.emplace_back(*reader_, path_of(key).index(i), element);
        } else {
            reader_->error_at(element.place, path_of(key).index(i),
                              wrong_type(element_name(key, i), "a table " + header, element));
        }
    }
    return tables;
}

} // namespace thawslip::toml
