#include "app/choices.h"

#include "app/exit_status.h"
#include "base/nearest.h"
#include "layout/files/layout_file.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fmt/format.h>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

std::string all_text(const Diagnostics& diagnostics, std::string_view source) {
    std::string text;
    for (const auto& diagnostic : diagnostics) {
        text += to_text(diagnostic, source);
    }
    return text;
}

/// "there is no stock called x", with the nearest name or the way to see all.
std::string no_such(std::string_view what, const std::string& name,
                    const std::vector<std::string>& names) {
    auto text = fmt::format("error: there is no {} called \"{}\"\n", what, name);
    if (const auto near = nearest(name, names)) {
        return text + fmt::format("    hint: did you mean \"{}\"?\n", *near);
    }
    return text + fmt::format("    hint: the {}s are {}\n", what, list_of(names));
}

Result<layout::Layout, std::string> read_layout_file(const fs::path& path, OwnFiles& files) {
    auto text = files.text_of(path.string());
    if (!text) {
        return Failure{text.fault()};
    }
    Diagnostics faults;
    const auto document = toml::parse(std::move(text).value(), path.string(), faults);
    auto layout = layout::read_layout(document, path.stem().string(), faults);
    if (!layout) {
        return Failure{all_text(faults, document.text())};
    }
    return std::move(*layout);
}

Result<layout::Stock, std::string> read_own_stock(const std::string& file, OwnFiles& own) {
    auto text = own.text_of(file);
    if (!text) {
        return Failure{text.fault()};
    }
    auto reading =
        layout::read_stock(std::move(text).value(), file, fs::path{file}.stem().string());
    if (!reading.stock) {
        return Failure{all_text(reading.diagnostics, reading.text)};
    }
    return std::move(*reading.stock);
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

template <class T>
std::vector<std::string> names_of(const std::vector<T>& things) {
    std::vector<std::string> names;
    for (const auto& thing : things) {
        names.push_back(thing.name);
    }
    return names;
}

} // namespace

std::vector<layout::Stock> shipped_stocks(const DataFolder& data) {
    auto shelf = layout::load_stocks(data.stocks().string());
    if (has_errors(shelf.diagnostics)) {
        throw SystemFailure{all_text(shelf.diagnostics, {})};
    }
    return std::move(shelf.stocks);
}

Result<layout::Stock, std::string> choose_stock(const std::string& name_or_file,
                                                const DataFolder& data, OwnFiles& own) {
    if (is_file_name(name_or_file)) {
        return read_own_stock(name_or_file, own);
    }
    const auto file = data.stocks() / (name_or_file + ".toml");
    std::error_code error;
    if (!fs::exists(file, error)) {
        return Failure{no_such("stock", name_or_file, names_of(shipped_stocks(data)))};
    }
    auto reading = layout::load_stock(file.string());
    if (!reading.stock) {
        return Failure{all_text(reading.diagnostics, reading.text)};
    }
    return std::move(*reading.stock);
}

fs::path layout_folder(const DataFolder& data, wording::Kind kind) {
    switch (kind) {
    case wording::Kind::BagLabel: return data.layouts() / "label";
    case wording::Kind::FinishingCard:
    case wording::Kind::CookDayCard: return data.layouts() / "card";
    case wording::Kind::DoorList:
    case wording::Kind::DaySheet: return data.layouts() / "list";
    }
    return data.layouts();
}

std::vector<layout::Layout> shipped_layouts(const DataFolder& data,
                                            const std::set<wording::Kind>& kinds) {
    std::set<fs::path> folders;
    for (const auto kind : kinds) {
        folders.insert(layout_folder(data, kind));
    }
    std::vector<layout::Layout> layouts;
    for (const auto& folder : folders) {
        for (const auto& path : toml_files(folder)) {
            OwnFiles none;
            auto layout = read_layout_file(path, none);
            if (!layout) {
                throw SystemFailure{layout.fault()};
            }
            layouts.push_back(std::move(layout).value());
        }
    }
    return layouts;
}

const layout::Layout* layout_for(wording::Kind kind, const layout::Stock& stock,
                                 const std::vector<layout::Layout>& layouts) {
    const double ratio = stock.cell.width / stock.cell.height;
    const auto height = stock.cell.height;
    const auto found = std::ranges::find_if(layouts, [&](const layout::Layout& layout) {
        return layout.kind == kind && ratio >= layout.narrowest && ratio <= layout.widest &&
               height >= layout.lowest && height < layout.highest;
    });
    return found == layouts.end() ? nullptr : &*found;
}

Result<layout::Layout, std::string> choose_layout(const std::string& name_or_file,
                                                  const std::vector<layout::Layout>& shipped,
                                                  OwnFiles& own) {
    if (is_file_name(name_or_file)) {
        return read_layout_file(name_or_file, own);
    }
    const auto found = std::ranges::find(shipped, name_or_file, &layout::Layout::name);
    if (found == shipped.end()) {
        return Failure{no_such("layout", name_or_file, names_of(shipped))};
    }
    return *found;
}

} // namespace thawslip::app
