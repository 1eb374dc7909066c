#pragma once

#include "base/result.h"
#include "kitchen/settings.h"
#include "layout/printer_settings.h"
#include "toml/table.h"
#include "wording/style.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// What holds for one kitchen and its printer. Every setting has a default, so that no file is
/// needed; options on the command line win over it.
struct Settings {
    std::string paper = "letter";          ///< "letter" or "a4": which stocks are the default ones
    std::string label_stock;               ///< empty: the default one of the paper
    std::string card_stock;                ///< the same
    double dots_per_inch = 300.0;          ///< of the printer
    std::string storage_list = "us";       ///< the list of storage times that is asked first
    std::string language = "en";           ///< of what is printed: one of shipped_languages()
    std::string second_language;           ///< below it on cards; empty: none
    kitchen::KitchenSettings kitchen;      ///< region, units, altitude, people
    double paper_reflectance = 0.85;       ///< of the stock, in red light; white paper by default
    std::vector<layout::Printer> printers; ///< what was measured, for each paper
    std::string archive;       ///< its file, as archive_place() has it; empty: the usual place
    bool record_prints = true; ///< whether labels and cards go into the archive
    std::string file;          ///< where they were read; empty: nowhere
    std::string text;          ///< the file as written, for the archive
    std::string cautions;      ///< what is doubtful in it, as it is shown to the user
};

/// The words of the language that is set.
const wording::Language& language_of(const Settings& settings);

/// How prints and answers speak: language, units and list of allergens as set.
wording::Style style_of(const Settings& settings);

/// The same in the second language; nothing where none is set.
std::optional<wording::Style> second_style_of(const Settings& settings);

/// Sets the languages from "en" or "en,es". \returns what is wrong with the text, else nothing
std::optional<std::string> set_languages(Settings& settings, std::string_view text);

/// The languages as `set_languages` reads them.
std::string languages_text(const Settings& settings);

/// The words that a setting takes, for the command line to take the same.
std::span<const toml::Word> paper_words();
std::span<const toml::Word> storage_list_words();
std::span<const toml::Word> unit_words(); ///< in the order of kitchen::Units

/// The units by their word. \pre it is one of unit_words()
void set_units(Settings& settings, std::string_view word);
std::string units_text(const Settings& settings);

/// The file under $XDG_CONFIG_HOME, or under ~/.config where that is not set (XDG Base Directory
/// Specification, 0.8). Empty where neither is known.
std::string usual_settings_file();

/// Reads `file`; a missing file is the defaults, unless it was named by hand.
enum class Missing { IsFine, IsAFault };
/// \returns the settings, or what is wrong with the file, as it is shown to the user
Result<Settings, std::string> settings_from(std::string text, const std::string& file);
Result<Settings, std::string> load_settings(const std::string& file, Missing missing);

} // namespace thawslip::app
