#include "service/record/print_setup.h"

#include "base/list.h"
#include "base/split.h"
#include "kitchen/bag_id.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// Parts the options from the settings file that was in force, which follows as it was written.
constexpr std::string_view settings_head = "# settings\n";

std::string hash_of(std::string_view text) {
    return fmt::format("{:016x}", kitchen::fnv_1a(text));
}

/// The text that the layout of a print was read from.
std::string_view text_of(const layout::Layout& layout, const Setup& setup) {
    const auto* own =
        name_in(setup.layout) == layout.name ? setup.own.known(setup.layout) : nullptr;
    if (own != nullptr) {
        return *own;
    }
    const auto shipped = std::ranges::find(setup.texts, layout.name, &ShippedText::name);
    return shipped != setup.texts.end() ? std::string_view{shipped->text} : std::string_view{};
}

} // namespace

archive::PrintSetup print_setup(What what, const LaidOut& laid_out, const Look& look,
                                const Settings& settings) {
    return {std::string{kept_as(what)},
            laid_out.setup.stock,
            look.layout,
            kept_options(look, settings) + std::string{settings_head} + settings.text,
            look_of(laid_out),
            laid_out.setup.own.all()};
}

Result<PrintedWith, std::string> printed_with(const archive::PrintSetup& setup) {
    const auto cut = setup.settings.find(settings_head);
    const auto head = setup.settings.substr(0, cut);
    const auto tail = cut == std::string::npos ? std::string{}
                                               : setup.settings.substr(cut + settings_head.size());
    auto settings = settings_from(tail, "settings in the archive");
    if (!settings) {
        return Failure{"the settings of that print cannot be read:\n" + to_text(settings.messages)};
    }
    PrintedWith with{{}, std::move(*settings.value)};
    Diagnostics faults;
    const auto document = toml::parse(head, "options in the archive", faults);
    toml::Reader reader{document, faults};
    auto table = reader.root();
    read_kept_options(table, with.look, with.settings);
    with.look.stock = setup.stock;
    with.look.layout = setup.layout;
    with.look.kept = setup.files;
    if (has_errors(faults)) {
        return Failure{"the options of that print cannot be read:\n" +
                       to_text(faults.front(), document.text())};
    }
    return with;
}

std::string look_of(const LaidOut& laid_out) {
    const auto& setup = laid_out.setup;
    const auto* own_stock = setup.own.known(setup.stock);
    auto look = fmt::format("program {}\nstock {} {}\n", THAWSLIP_VERSION, setup.medium.stock.name,
                            hash_of(own_stock != nullptr ? *own_stock : setup.stock_text));
    for (const auto& [kind, layout] : setup.chosen) {
        look += fmt::format("layout {} {}\n", layout.name, hash_of(text_of(layout, setup)));
    }
    for (const auto& face : setup.fonts.faces) {
        look += fmt::format("face {} {}\n", face.postscript_name(), hash_of(face.bytes()));
    }
    return look;
}

namespace {

/// A line without its last word, the hash or the version: "stock letter-2x5-4x2in".
std::string named_in(const std::string& line) {
    return line.substr(0, line.rfind(' '));
}

} // namespace

std::vector<std::string> changed_look(std::string_view then, std::string_view now) {
    const auto before = lines_in(then);
    const auto names = mapped(before, named_in); // what was not there then has not changed
    std::vector<std::string> changed;
    for (const auto& line : lines_in(now)) {
        const auto name = named_in(line);
        if (std::ranges::find(before, line) == before.end() &&
            std::ranges::find(names, name) != names.end()) {
            changed.push_back(name);
        }
    }
    return changed;
}

} // namespace thawslip::service
