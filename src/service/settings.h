#pragma once

#include "kitchen/settings.h"
#include "layout/files/printer_settings.h"
#include "service/messages.h"
#include "toml/file_table.h"
#include "wording/goods.h"
#include "wording/style.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

inline constexpr double usual_dots_per_inch = 300.0; ///< of a printer that nothing is said of

/// What one kind of print is printed by and on, as its table of the settings says it.
struct JobSettings {
    std::string printer; ///< for --print without a name; empty: the usual one of the computer
    std::string stock;   ///< name or file; empty: the one that fits the paper
    std::optional<double> dots_per_inch; ///< nothing: usual_dots_per_inch
    std::optional<int> copies;           ///< nothing: 1
    friend bool operator==(const JobSettings&, const JobSettings&) = default;
};

/// Who says which paper it is.
enum class PaperFrom {
    Nobody, ///< neither settings nor locale: it is "letter"
    Settings,
    Option,
    Locale, ///< Settings::locale
};

/// What holds for one kitchen and its printer. Every setting has a default, so that no file is
/// needed; options on the command line win over it.
struct Settings {
    std::string paper = "letter"; ///< "letter" or "a4": which stocks are the default ones
    PaperFrom paper_from = PaperFrom::Nobody;
    std::string locale; ///< of the desktop, where the paper is that one's
    JobSettings labels;
    JobSettings finishing_cards;
    JobSettings cook_day_cards;
    JobSettings lists;                     ///< dinner plans too
    bool large_print = false;              ///< of all prints: 1.4 times the smallest type and more
    std::string storage_list = "us";       ///< the list of storage times that is asked first
    std::string language = "en";           ///< of what is printed: one of shipped_languages()
    std::string second_language;           ///< below it on cards; empty: none
    kitchen::KitchenSettings kitchen;      ///< region, units, altitude, people
    double paper_reflectance = 0.85;       ///< of the stock, in red light; white paper by default
    std::vector<layout::Printer> printers; ///< what was measured, for each paper
    std::string archive;                   ///< its file; empty: the usual place
    std::string goods_file;                ///< the cook's own goods; empty: none
    std::shared_ptr<const wording::Goods> goods; ///< read from there; nullptr: those that ship
    bool record_prints = true;                   ///< whether labels and cards go into the archive
    std::string file;                            ///< where they were read; empty: nowhere
    std::string text;                            ///< the file as written, for the archive
};

/// The goods by which shopping is sorted.
const wording::Goods& goods_of(const Settings& settings);

/// The words of the language that is set.
const wording::Language& language_of(const Settings& settings);

/// How prints and answers speak: language, units and list of allergens as set.
wording::Style style_of(const Settings& settings);

/// How messages speak, and `check`: in English as a whole, whatever is printed, for their frame is
/// English; units and list of allergens as set.
wording::Style message_style(const Settings& settings);

/// How prints speak in the second language; nothing where none is set.
std::optional<wording::Style> second_style_of(const Settings& settings);

/// Sets the languages from "en" or "en,es". \returns what is wrong with the text, else nothing
std::optional<std::string> set_languages(Settings& settings, std::string_view text);

/// Why the paper is the one that it is: "as the locale de_DE has it".
std::string why_paper(const Settings& settings);

/// The words that a setting takes, for the command line to take the same.
std::span<const toml::Word> paper_words();
std::span<const toml::Word> storage_list_words();
std::span<const toml::Word> unit_words();

/// A setting that a command line may override, and that is therefore kept with every print.
struct SettingOption {
    const char* key; ///< as in the settings file
    std::string (*text)(const Settings& settings);
    /// \returns what is wrong with `text`, else nothing
    std::optional<std::string> (*set)(Settings& settings, std::string_view text);
};
std::span<const SettingOption> setting_options();

/// Reads the text of a settings file.
/// \param file what messages call it
Outcome<Settings> settings_from(std::string text, const std::string& file);

} // namespace thawslip::service
