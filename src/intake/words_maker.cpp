// Run when Thawslip is built: turns the files of everyday words into the constants of
// kitchen/texts/lexicon_rows.h. A file with faults does not build.
//
// usage: thawslip_words EN.toml ES.toml DE.toml FR.toml OUT.cpp

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

std::string array_of(int language, const std::vector<intake::WordsRow>& rows) {
    auto text = fmt::format("constexpr LexiconRow words_{}[] = {{\n", language);
    for (const auto& row : rows) {
        text += fmt::format("    {{Section{{{}}}, R\"({})\", R\"({})\", R\"({})\"}},\n",
                            static_cast<int>(row.section), row.meaning, row.phrase,
                            fmt::join(kitchen::words_of(row.phrase), " "));
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
