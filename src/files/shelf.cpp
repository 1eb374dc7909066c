#include "files/shelf.h"

#include "base/list.h"
#include "base/system_failure.h"
#include "base/text_file.h"
#include "files/input_file.h"

#include <algorithm>
#include <filesystem>

namespace thawslip::files {
namespace {

namespace fs = std::filesystem;

/// Layouts for labels, for cards and for lists each have a folder of their own.
fs::path layout_folder(const DataFolder& data, wording::Kind kind) {
    switch (kind) {
    case wording::Kind::BagLabel: return data.layouts() / "label";
    case wording::Kind::FinishingCard:
    case wording::Kind::CookDayCard: return data.layouts() / "card";
    case wording::Kind::DoorList:
    case wording::Kind::DaySheet:
    case wording::Kind::PlanSheet: return data.layouts() / "list";
    }
    return data.layouts();
}

constexpr std::size_t largest_file = std::size_t{1} << 18U;

service::ShippedText read_shipped(const fs::path& path) {
    auto text = read_text_file(path.string(), largest_file);
    if (!text) {
        throw SystemFailure{to_text(to_diagnostic(text.fault()))};
    }
    return {path.stem().string(), path.string(), std::move(text).value()};
}

std::vector<fs::path> toml_files(const fs::path& folder) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator{folder}) {
        if (entry.path().extension() == ".toml") {
            files.push_back(entry.path());
        }
    }
    std::ranges::sort(files);
    return files;
}

std::optional<layout::StockReading> shipped_stock(const DataFolder& data, const std::string& name) {
    const auto file = data.stocks() / (name + ".toml");
    std::error_code error;
    return fs::exists(file, error) ? std::optional{layout::load_stock(file.string())}
                                   : std::nullopt;
}

/// The layouts of the folders for these kinds, by folder and name. Other folders are not looked
/// into: a print takes time enough without them.
std::vector<service::ShippedText> shipped_layouts(const DataFolder& data,
                                                  const std::set<wording::Kind>& kinds) {
    const auto folders = mapped<std::set<fs::path>>(
        kinds, [&data](wording::Kind kind) { return layout_folder(data, kind); });
    std::vector<service::ShippedText> texts;
    for (const auto& folder : folders) {
        std::ranges::transform(toml_files(folder), std::back_inserter(texts), read_shipped);
    }
    return texts;
}

} // namespace

service::Surroundings surroundings_in(const std::function<DataFolder()>& folder,
                                      service::IdSource ids) {
    return {
        [folder](const std::string& name) { return shipped_stock(folder(), name); },
        [folder] { return layout::load_stocks(folder().stocks().string()); },
        [folder](const std::set<wording::Kind>& kinds) { return shipped_layouts(folder(), kinds); },
        [](const std::string& file) { return read_input(file, largest_file); },
        [folder] { return load_fonts(folder()); },
        std::move(ids)};
}

} // namespace thawslip::files
