#include "app/print_setup.h"

#include "app/choices.h"
#include "base/text_file.h"
#include "kitchen/bag_id.h"
#include "toml/reader.h"
#include "toml/table.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// Parts the options from the settings file that was in force, which follows as it was written.
constexpr std::string_view settings_head = "# settings\n";

std::string hash_of(std::string_view text) {
    return fmt::format("{:016x}", kitchen::fnv_1a(text));
}

std::optional<std::string> text_on_disk(const fs::path& path) {
    constexpr std::size_t largest = std::size_t{1} << 26U;
    auto text = read_text_file(path.string(), largest);
    return text ? std::optional{std::move(text).value()} : std::nullopt;
}

std::string hash_of_file(const fs::path& path) {
    const auto text = text_on_disk(path);
    return text ? hash_of(*text) : "unreadable";
}

/// Of a file of the cook's own the text that was laid out, whatever the disk holds by now.
std::string hash_of_file(const fs::path& path, const OwnFiles& own) {
    const auto known = std::ranges::find(own.all(), path.string(), &archive::SetupFile::name);
    return known == own.all().end() ? hash_of_file(path) : hash_of(known->text);
}

/// A name of something shipped stays a name; a file is found again from any folder.
std::string lasting_name(const std::string& name_or_file) {
    return is_file_name(name_or_file) ? fs::absolute(name_or_file).lexically_normal().string()
                                      : name_or_file;
}

fs::path layout_path(const layout::Layout& layout, const LaidOut& laid_out,
                     const PrintOptions& options) {
    if (is_file_name(options.layout) && fs::path{options.layout}.stem().string() == layout.name) {
        return options.layout;
    }
    return layout_folder(laid_out.setup.data, layout.kind) / (layout.name + ".toml");
}

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const auto end = std::min(text.find('\n'), text.size());
        lines.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

std::string options_text(const PrintOptions& options, const Settings& settings) {
    std::string spoiled;
    for (const int cell : options.spoiled) {
        spoiled += fmt::format("{}{}.0", spoiled.empty() ? "" : ", ", cell);
    }
    return fmt::format("paper = \"{}\"\nstorage_list = \"{}\"\nlanguage = \"{}\"\nunits = \"{}\"\n"
                       "first_cell = "
                       "{}\nspoiled = [{}]\n"
                       "dpi = {}\nsmall_modules = {}\n",
                       settings.paper, settings.storage_list, languages_text(settings),
                       units_text(settings), options.first_cell, spoiled,
                       options.dots_per_inch.value_or(settings.dots_per_inch),
                       options.small_modules);
}

PrintOptions read_options(toml::Table& table, Settings& settings) {
    PrintOptions options;
    const auto paper = table.string("paper");
    const auto list = table.string("storage_list");
    settings.paper = paper ? paper->value : settings.paper;
    settings.storage_list = list ? list->value : settings.storage_list;
    const auto language = table.string("language");
    if (const auto fault = language ? set_languages(settings, language->value) : std::nullopt) {
        table.reader().error(language->key, *fault);
    }
    // Prints of before there were units in the options have those of their settings file.
    if (const auto units = table.word("units", "a system of units", service::unit_words())) {
        settings.kitchen.units = static_cast<kitchen::Units>(*units);
    }
    options.first_cell = static_cast<int>(table.integer("first_cell", {1, 10'000}).value_or(1));
    for (const double cell : table.reals("spoiled", 10'000, {1.0, 10'000.0})) {
        options.spoiled.push_back(static_cast<int>(cell));
    }
    options.dots_per_inch = table.real("dpi", {72.0, 4800.0});
    options.small_modules = table.boolean("small_modules").value_or(false);
    table.refuse_unknown();
    return options;
}

} // namespace

archive::PrintSetup print_setup(const std::string& what, const LaidOut& laid_out,
                                const PrintOptions& options, const Settings& settings) {
    archive::PrintSetup setup{what,
                              lasting_name(laid_out.setup.stock),
                              lasting_name(options.layout),
                              options_text(options, settings) + std::string{settings_head} +
                                  settings.text,
                              look_of(laid_out, options),
                              {}};
    for (const auto& file : laid_out.setup.own.all()) {
        setup.files.push_back({lasting_name(file.name), file.text});
    }
    return setup;
}

PrintedWith printed_with(const archive::PrintSetup& setup) {
    const auto cut = setup.settings.find(settings_head);
    const auto head = setup.settings.substr(0, cut);
    const auto tail = cut == std::string::npos ? std::string{}
                                               : setup.settings.substr(cut + settings_head.size());
    auto settings = service::settings_from(tail, "settings in the archive");
    if (!settings) {
        throw SystemFailure{"the settings of that print cannot be read:\n" +
                            to_text(settings.messages)};
    }
    PrintedWith with{{}, std::move(*settings.value)};
    Diagnostics faults;
    const auto document = toml::parse(head, "options in the archive", faults);
    toml::Reader reader{document, faults};
    auto table = reader.root();
    with.options = read_options(table, with.settings);
    with.options.stock = setup.stock;
    with.options.layout = setup.layout;
    with.options.kept = setup.files;
    if (has_errors(faults)) {
        throw SystemFailure{"the options of that print cannot be read:\n" +
                            to_text(faults.front(), document.text())};
    }
    return with;
}

std::string look_of(const LaidOut& laid_out, const PrintOptions& options) {
    const auto& setup = laid_out.setup;
    const auto& stock = setup.target.stock;
    const auto stock_file = is_file_name(setup.stock)
                                ? fs::path{setup.stock}
                                : setup.data.stocks() / (stock.name + ".toml");
    auto look = fmt::format("program {}\nstock {} {}\n", THAWSLIP_VERSION, stock.name,
                            hash_of_file(stock_file, setup.own));
    for (const auto& [kind, layout] : setup.chosen) {
        look += fmt::format("layout {} {}\n", layout.name,
                            hash_of_file(layout_path(layout, laid_out, options), setup.own));
    }
    for (const auto& face : setup.fonts.faces) {
        look += fmt::format("face {} {}\n", face.postscript_name(), hash_of(face.bytes()));
    }
    return look;
}

std::vector<std::string> changed_look(std::string_view then, std::string_view now) {
    const auto before = lines_of(then);
    std::vector<std::string> changed;
    for (const auto& line : lines_of(now)) {
        if (std::ranges::find(before, line) == before.end()) {
            changed.push_back(line.substr(0, line.rfind(' ')));
        }
    }
    return changed;
}

std::vector<std::string> changed_files(const std::vector<archive::SetupFile>& files) {
    std::vector<std::string> changed;
    for (const auto& file : files) {
        const auto now = text_on_disk(file.name);
        if (now != file.text) {
            changed.push_back(file.name + (now ? " has changed" : " is gone"));
        }
    }
    return changed;
}

} // namespace thawslip::app
