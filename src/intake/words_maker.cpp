// Run when Thawslip is built: turns the files of everyday words into the constants of
// kitchen/texts/lexicon_rows.h. A file with faults does not build.
//
// usage: thawslip_words EN.toml ES.toml DE.toml FR.toml OUT.cpp

#include "base/list.h"
#include "base/text_file.h"
#include "intake/words_file.h"
#include "kitchen/texts/text.h"

#include <cstdio>
#include <fmt/format.h>
#include <fstream>
#include <optional>

namespace {

using namespace thawslip;

/// In the order of kitchen::Tongue.
constexpr int languages = 4;

/// The rows of one file; nothing where it has faults, which are reported.
std::optional<std::vector<intake::WordsRow>> rows_of(const char* path) {
    constexpr std::size_t most_bytes = 1'000'000;
    auto text = read_text_file(path, most_bytes);
    if (!text) {
        fmt::print(stderr, "{}", to_text(to_diagnostic(text.fault())));
        return std::nullopt;
    }
    Diagnostics faults;
    const auto document = toml::parse(std::move(text).value(), path, faults);
    auto rows = intake::read_words(document, faults);
    for (const auto& fault : faults) {
        fmt::print(stderr, "{}", to_text(fault, document.text()));
    }
    return faults.empty() ? std::optional{std::move(rows)} : std::nullopt;
}

constexpr int spanish = static_cast<int>(kitchen::Tongue::Spanish);

/// The words of a phrase, and in Spanish with each article that may follow a "de": "setas de
/// bosque", "setas del bosque"; a "de" at the end is also "del".
std::vector<std::string> ways_to_write(int language, const std::string& phrase) {
    std::vector<std::string> ways{{}};
    const auto words = kitchen::words_of(phrase);
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool bends = language == spanish && is_one_of(words[i], {"de", "del"});
        const bool ends = i + 1 == words.size();
        const auto forms =
            !bends ? std::vector{words[i]}
            : ends ? std::vector<std::string>{"de", "del"}
                   : std::vector<std::string>{"de", "del", "de la", "de los", "de las", "de el"};
        std::vector<std::string> longer;
        for (const auto& way : ways) {
            for (const auto& form : forms) {
                longer.push_back(way.empty() ? form : fmt::format("{} {}", way, form));
            }
        }
        ways = std::move(longer);
    }
    return ways;
}

std::string array_of(int language, const std::vector<intake::WordsRow>& rows) {
    auto text = fmt::format("constexpr LexiconRow words_{}[] = {{\n", language);
    for (const auto& row : rows) {
        for (const auto& way : ways_to_write(language, row.phrase)) {
            text += fmt::format("    {{Section{{{}}}, R\"({})\", R\"({})\", R\"({})\"}},\n",
                                static_cast<int>(row.section), row.meaning, row.phrase, way);
        }
    }
    return text + "};\n";
}

} // namespace

int main(int count, char** words) {
    if (count != languages + 2) {
        fmt::print(stderr, "usage: thawslip_words EN.toml ES.toml DE.toml FR.toml OUT.cpp\n");
        return 2;
    }
    std::string arrays;
    std::string files;
    for (int language = 0; language < languages; ++language) {
        const auto rows = rows_of(words[language + 1]);
        if (!rows) {
            return 1;
        }
        arrays += array_of(language, *rows);
        files += fmt::format("    {{Tongue{{{0}}}, words_{0}}},\n", language);
    }
    std::ofstream out{words[languages + 1]};
    out << "// Made from src/kitchen/words by thawslip_words.\n"
           "#include \"kitchen/texts/lexicon_rows.h\"\n\n"
           "namespace thawslip::kitchen {\nnamespace {\n\n"
        << arrays << "\nconstexpr LexiconFile files[] = {\n"
        << files
        << "};\n\n} // namespace\n\n"
           "std::span<const LexiconFile> lexicon_files() {\n    return files;\n}\n\n"
           "} // namespace thawslip::kitchen\n";
    return out.flush() ? 0 : 1;
}
