#include "intake/food_words_file.h"

#include "base/printable.h"
#include "kitchen/foods/food_senses.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::intake {
namespace {

using kitchen::FoodRole;

constexpr std::size_t most_words = 2000;

/// The words read so far, and where the next ones go.
struct WordReading {
    toml::Reader& reader;
    const std::string& language;
    const kitchen::StorageTable& table;
    std::vector<OwnFoodWord> words = {};
};

void add(WordReading& reading, const toml::Text& word, FoodRole role, const std::string& means) {
    auto key = kitchen::food_key(word.value);
    const auto same = std::ranges::find(reading.words, key, &OwnFoodWord::key);
    if (same != reading.words.end()) {
        if (same->role != role || same->means != means) {
            reading.reader.error(word.key,
                                 fmt::format("{} is {} already, as \"{}\"", in_quotes(word.value),
                                             same->means, same->written));
        }
        return;
    }
    reading.words.push_back(
        {std::move(key), role, means, word.value, reading.language, reading.language == "de"});
}

void add_all(WordReading& reading, toml::Table& table, const std::string& key, FoodRole role,
             const std::string& means) {
    for (const auto& word : table.strings(key.c_str(), most_words)) {
        add(reading, word, role, means);
    }
}

bool is_kind(const kitchen::StorageTable& table, const std::string& name) {
    return kitchen::find_storage(table, name) || kitchen::find_unsuitable(table, name);
}

void expect_kind(WordReading& reading, const KeyPath& where, const std::string& name) {
    if (!is_kind(reading.table, name)) {
        reading.reader.error(where, in_quotes(name) + " is no kind of food of storage.toml");
    }
}

void read_kinds(WordReading& reading, toml::Table& root) {
    if (auto table = root.table("kind")) {
        for (const auto& kind : table->keys()) {
            expect_kind(reading, table->path().key(kind), kind);
            add_all(reading, *table, kind, FoodRole::Kind, kind);
        }
    }
}

void read_questions(WordReading& reading, toml::Table& root) {
    for (auto& entry : root.tables("question", most_words)) {
        std::string means;
        for (const auto& kind : entry.strings("kinds", most_words)) {
            expect_kind(reading, kind.key, kind.value);
            means += (means.empty() ? "" : "|") + kind.value;
        }
        add_all(reading, entry, "words", FoodRole::Question, means);
        entry.refuse_unknown();
    }
}

/// A table of which each key is one of `senses`, where these are given.
void read_senses(WordReading& reading, toml::Table& root, const char* key, FoodRole role) {
    if (auto table = root.table(key)) {
        for (const auto& sense : table->keys()) {
            add_all(reading, *table, sense, role, sense);
        }
    }
}

void read_list(WordReading& reading, toml::Table& root, const char* key, FoodRole role) {
    if (auto table = root.table(key)) {
        add_all(reading, *table, "words", role, "");
        table->refuse_unknown();
    }
}

} // namespace

std::vector<OwnFoodWord> read_food_words(const toml::Document& document,
                                         const std::string& language,
                                         const kitchen::StorageTable& table, Diagnostics& faults) {
    toml::Reader reader{document, faults};
    auto root = reader.root();
    WordReading reading{reader, language, table};
    read_kinds(reading, root);
    read_questions(reading, root);
    read_senses(reading, root, "base", FoodRole::Base);
    read_senses(reading, root, "form", FoodRole::Form);
    read_senses(reading, root, "state", FoodRole::State);
    read_list(reading, root, "no_animal", FoodRole::NoAnimal);
    read_list(reading, root, "say_nothing", FoodRole::SaysNothing);
    root.refuse_unknown();
    reader.finish();
    return reading.words;
}

} // namespace thawslip::intake
