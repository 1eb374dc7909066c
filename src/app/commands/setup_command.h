#pragma once

#include "app/commands.h"

#include <iosfwd>
#include <optional>
#include <string>

namespace thawslip::app {

/// What `setup` is told by options; what is empty or nothing is asked for.
struct SetupOptions {
    std::string file;     ///< to be written; empty: the usual one
    std::string paper;    ///< "letter" or "a4"
    std::string language; ///< as Settings: "de", "en,es"
    std::optional<std::string> label_printer;
    std::optional<std::string> card_printer;
    std::optional<std::string> list_printer;
    std::string label_stock;
    std::string cook_day_stock;
    std::string finishing_stock;
    std::optional<double> label_dots;
    std::string ruler;                   ///< a file for the ruler page; empty: it is offered
    bool takes_proposals = false;        ///< nothing is asked
    Overwrite overwrite = Overwrite::No; ///< of settings that are there
};

/// Asks on `console.out` for what is not told, reads the answers from `answers`, a line each, and
/// writes the settings file. An empty line takes what is proposed. In a file that is there, only
/// what is asked for changes; a copy of it stays.
ExitStatus setup(const SetupOptions& options, const Settings& now, std::istream& answers,
                 Console console);

} // namespace thawslip::app
