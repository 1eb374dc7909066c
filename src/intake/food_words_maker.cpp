// Run when Thawslip is built: turns food_words/*.toml into constants, sorted by their keys. Files
// with faults do not build.
//
// usage: thawslip_food_words STORAGE.toml OUT.cpp en.toml es.toml…

#include "base/text_file.h"
#include "intake/food_words_file.h"
#include "intake/storage_file.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <optional>

namespace {

using namespace thawslip;

/// The document, its faults told; nothing where it cannot be read.
template <class Take>
bool take_file(const char* file, Take take) {
    constexpr std::size_t most_bytes = 1'000'000;
    auto text = read_text_file(file, most_bytes);
    if (!text) {
        fmt::print(stderr, "{}", to_text(to_diagnostic(text.fault())));
        return false;
    }
    Diagnostics faults;
    const auto document = toml::parse(std::move(text).value(), file, faults);
    take(document, faults);
    for (const auto& fault : faults) {
        fmt::print(stderr, "{}", to_text(fault, document.text()));
    }
    return faults.empty();
}

std::string line_of(const intake::OwnFoodWord& word) {
    return fmt::format("    {{R\"({})\", FoodRole{{{}}}, R\"({})\", R\"({})\", \"{}\", {}}},\n",
                       word.key, static_cast<int>(word.role), word.means, word.written,
                       word.language, word.in_compounds);
}

std::string constants_of(const std::vector<intake::OwnFoodWord>& words) {
    std::string text = "// Made from src/kitchen/food_words by thawslip_food_words.\n"
                       "#include \"intake/storage_data.h\"\n\n"
                       "namespace thawslip::intake {\nnamespace {\n\n"
                       "using kitchen::FoodRole;\n\n"
                       "constexpr kitchen::FoodWord words[] = {\n";
    for (const auto& word : words) {
        text += line_of(word);
    }
    return text + "};\n\n} // namespace\n\nconst kitchen::FoodWords food_words{words};\n\n"
                  "} // namespace thawslip::intake\n";
}

/// The rarer sense is given up where two languages share a word: what says more of food wins, and
/// of two kinds the first language's.
void keep_one_each(std::vector<intake::OwnFoodWord>& words) {
    std::ranges::stable_sort(words, {}, [](const intake::OwnFoodWord& word) {
        return std::pair{word.key, word.role};
    });
    const auto same = [](const auto& a, const auto& b) { return a.key == b.key; };
    for (std::size_t i = words.size(); i-- > 1;) {
        words[i - 1].in_compounds |= same(words[i - 1], words[i]) && words[i].in_compounds;
    }
    words.erase(std::unique(words.begin(), words.end(), same), words.end());
}

/// The kinds' own names are words too, but where a language has more to say of one. Not those that
/// begin with "raw": in "raw game hen" they would keep the hen from being seen.
void add_names(std::vector<intake::OwnFoodWord>& words, const kitchen::StorageTable& table) {
    auto names = kitchen::storage_classes(table);
    for (const auto& row : table.unsuitable) {
        names.push_back(row.food);
    }
    for (const auto& name : names) {
        const auto key = kitchen::food_key(name);
        if (!name.starts_with("raw ") &&
            std::ranges::find(words, key, &intake::OwnFoodWord::key) == words.end()) {
            words.push_back({key, kitchen::FoodRole::Kind, name, name, "en", false});
        }
    }
}

} // namespace

int main(int count, char** arguments) {
    if (count < 4) {
        fmt::print(stderr, "usage: thawslip_food_words STORAGE.toml OUT.cpp LANGUAGE.toml...\n");
        return 2;
    }
    kitchen::StorageTable table;
    bool sound = take_file(arguments[1], [&](const toml::Document& document, Diagnostics& faults) {
        table = intake::read_storage(document, faults);
    });
    std::vector<intake::OwnFoodWord> words;
    for (int i = 3; i < count; ++i) {
        const auto language = std::filesystem::path{arguments[i]}.stem().string();
        sound &= take_file(arguments[i], [&](const toml::Document& document, Diagnostics& faults) {
            const auto more = intake::read_food_words(document, language, table, faults);
            words.insert(words.end(), more.begin(), more.end());
        });
    }
    if (!sound) {
        return 1;
    }
    keep_one_each(words);
    add_names(words, table);
    std::ranges::sort(words, {}, &intake::OwnFoodWord::key);
    std::ofstream out{arguments[2]};
    out << constants_of(words);
    return out.flush() ? 0 : 1;
}
