#include "app/archive_place.h"
#include "app/commands.h"
#include "app/commands/print_archive.h"
#include "app/commands/print_job.h"
#include "app/commands/recording.h"
#include "app/files/data_folder.h"
#include "app/files/day_files.h"
#include "app/files/output_guard.h"
#include "app/used_sheets.h"
#include "service/freezer/bags.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

ExitStatus put_out(const service::Outcome<service::Printing>& printing, const PrintOptions& options,
                   const Settings& settings, Console console) {
    console.err << to_text(printing.messages);
    if (!printing) {
        return ExitStatus::Refused;
    }
    if (printing.value->job.prints.empty()) {
        console.out << "nothing to print: " << printing.value->why_nothing << "\n";
        return ExitStatus::Done;
    }
    return put_out(*printing.value, options, settings, console);
}

ExitStatus print_once(const service::DayTexts& texts, What what, const PrintOptions& options,
                      const Settings& settings, Console console) {
    const auto ids = kept_as(what).empty() ? ids_for_lists(options, settings, console)
                                           : ids_for_print(options, settings, console);
    auto around = surroundings(ids);
    around.used_sheet = used_sheets(settings);
    return put_out(print(texts, what, options.look, settings, around), options, settings, console);
}

/// Whether the settings have both kinds of cards printed in two ways, and no option in one.
bool go_apart(What what, const PrintOptions& options, Settings settings) {
    for (auto* cards : {&settings.finishing_cards, &settings.cook_day_cards}) {
        if (!options.printer || !options.printer->empty()) {
            cards->printer.clear();
        }
        if (!options.look.stock.empty()) {
            cards->stock.clear();
        }
        if (options.look.dots_per_inch) {
            cards->dots_per_inch.reset();
        }
        if (options.look.part.copies) {
            cards->copies.reset();
        }
    }
    return what == What::Cards && are_cards_apart(settings);
}

/// Cook-day cards and finishing cards, each as its settings say.
ExitStatus print_cards_apart(const PrintOptions& options, const Settings& settings,
                             Console console) {
    if (!options.output.empty()) {
        console.err << "error: by the settings, finishing cards and cook-day cards are printed in "
                       "two ways, and one file has room for one\n"
                       "    hint: --cook-day and --finishing, one after the other; or name one "
                       "--stock, --dpi and --copies for both\n";
        return ExitStatus::Refused;
    }
    const auto first = print_days(What::CookDayCards, options, settings, console);
    return first != ExitStatus::Done ? first
                                     : print_days(What::FinishingCards, options, settings, console);
}

} // namespace

ExitStatus print_days(What what, const PrintOptions& options, const Settings& settings,
                      Console console) {
    if (go_apart(what, options, settings)) {
        return print_cards_apart(options, settings, console);
    }
    if (const auto refused = refuse_output(output_of(options), settings, console)) {
        return *refused; // before the archive is looked into
    }
    const auto texts = read_texts(options.days);
    constexpr int most_attempts = 5;
    for (int attempt = 1;; ++attempt) {
        try {
            return print_once(texts, what, options, settings, console);
        } catch (const Raced& raced) {
            if (raced.is_out() && (options.printer || options.output == "-")) {
                throw SystemFailure{fmt::format("do not use these labels: {}", raced.what())};
            }
            if (attempt == most_attempts) {
                throw SystemFailure{fmt::format("nothing was printed: {}", raced.what())};
            }
        }
    }
}

ExitStatus print_frozen(const PrintOptions& options, const Settings& settings, Console console) {
    if (const auto refused = refuse_output(output_of(options), settings, console)) {
        return *refused;
    }
    auto archive = existing_archive(settings, archive::Mode::Read);
    auto rows = archive ? service::door_rows(*archive, *style_of(settings).allergens)
                        : std::vector<wording::DoorRow>{};
    auto around = surroundings();
    around.used_sheet = used_sheets(settings);
    return put_out(print_door_list(std::move(rows), options.look, settings, around), options,
                   settings, console);
}

} // namespace thawslip::app
