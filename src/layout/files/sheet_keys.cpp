#include "layout/files/sheet_keys.h"

#include "base/length_text.h"
#include "base/nearest.h"
#include "base/printable.h"
#include "layout/sheets/paper.h"

#include <fmt/format.h>

namespace thawslip::layout {
namespace {

std::optional<Size> named_paper(toml::Reader& reader, const toml::Text& paper) {
    if (const auto size = paper_size(paper.value)) {
        return size;
    }
    std::vector<std::string> names;
    for (const auto& one : papers()) {
        names.emplace_back(one.name);
        names.push_back(std::string{one.name} + " landscape");
    }
    toml::Hints hints;
    if (const auto near = nearest(paper.value, names)) {
        hints.push_back(fmt::format("did you mean \"{}\"?", *near));
    }
    hints.push_back(fmt::format("any other paper: sheet = {}", sheet_key.example));
    reader.error(paper.key, fmt::format("{} is no paper known by name", in_quotes(paper.value)),
                 std::move(hints));
    return std::nullopt;
}

} // namespace

const toml::Key paper_key{"paper", "\"letter\""};
const toml::Key sheet_key{"sheet", "[\"210 mm\", \"297 mm\"]"};

std::optional<std::vector<Length>> read_lengths(toml::Table& table, const toml::Key& key,
                                                std::size_t count, std::string_view meaning) {
    toml::Reader& reader = table.reader();
    const auto errors = reader.errors();
    const auto texts = table.strings(key, count);
    if (!table.has(key)) {
        return std::nullopt;
    }
    std::vector<Length> lengths;
    for (const auto& text : texts) {
        const auto length = parse_length(text.value);
        if (length) {
            lengths.push_back(length.value());
        } else {
            reader.error_inside(text.key, length.fault().offset, length.fault().message);
        }
    }
    if (reader.errors() == errors && lengths.size() != count) {
        reader.error(table.path_of(key),
                     fmt::format("{} has {} {}, expected {}: {}", key.name, lengths.size(),
                                 lengths.size() == 1 ? "length" : "lengths", count, meaning),
                     {fmt::format("for example {} = {}", key.name, key.example)});
    }
    return reader.errors() == errors ? std::optional{lengths} : std::nullopt;
}

std::optional<Size> read_size(toml::Table& table, const toml::Key& key) {
    const auto lengths = read_lengths(table, key, 2, "across and down");
    return lengths ? std::optional{Size{(*lengths)[0], (*lengths)[1]}} : std::nullopt;
}

std::optional<Size> read_paper(toml::Table& table) {
    const auto sheet = read_size(table, sheet_key);
    const auto name = table.string(paper_key);
    if (table.has(sheet_key) && table.has(paper_key)) {
        table.reader().error(table.path_of(sheet_key),
                             "the paper is given twice, by name and by size",
                             {"leave out paper or sheet"});
    }
    return name ? named_paper(table.reader(), *name) : sheet;
}

} // namespace thawslip::layout
