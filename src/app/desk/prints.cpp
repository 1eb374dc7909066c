#include "app/desk/prints.h"

#include "app/archive_commands.h"
#include "app/clock.h"
#include "app/files/scratch_folder.h"
#include "base/text_file.h"

#include <filesystem>
#include <fmt/format.h>
#include <functional>
#include <sstream>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// A command whose words are kept. \param run what it does
desk::Delivered heard(const std::function<ExitStatus(Console)>& run) {
    std::ostringstream said;
    desk::Delivered delivered;
    delivered.done = run({said, said}) == ExitStatus::Done;
    delivered.said = said.str();
    return delivered;
}

/// A PDF as it is sent: some hundred pages at most.
std::string pdf_in(const std::string& file) {
    constexpr std::size_t most = std::size_t{256} << 20U;
    auto bytes = read_text_file(file, most);
    return bytes ? std::move(bytes).value() : std::string{};
}

/// Prints where the cook wants it; a PDF is written where nobody else looks, and handed over.
template <class Options>
desk::Delivered printed(Options options, const desk::Destination& to, const std::string& name,
                        const std::function<ExitStatus(const Options&, Console)>& run) {
    options.printer = to.printer;
    if (to.printer) {
        return heard([&](Console console) { return run(options, console); });
    }
    const ScratchFolder scratch;
    options.output = scratch.file(name);
    options.called = name;
    auto delivered = heard([&](Console console) { return run(options, console); });
    delivered.pdf = pdf_in(options.output);
    return delivered;
}

/// "labels.pdf", "cook-day-cards.pdf"
std::string pdf_name(service::What what) {
    switch (what) {
    case What::Labels: return "labels.pdf";
    case What::Cards: return "cards.pdf";
    case What::FinishingCards: return "finishing-cards.pdf";
    case What::CookDayCards: return "cook-day-cards.pdf";
    case What::Shopping: return "shopping-list.pdf";
    case What::DoorList: return "door-list.pdf";
    case What::Lists:
    case What::DaySheets:
    case What::StationSheets: return "day-sheets.pdf";
    case What::PlanSheet: return "plan.pdf";
    }
    return "print.pdf";
}

/// A name in the folder that nothing has yet: "archive-2026-10-17.db", "archive-2026-10-17-2.db".
std::string free_place(const std::string& folder, const std::string& ending) {
    fs::create_directories(folder);
    const auto name = fmt::format("archive-{}", kitchen::to_iso(today()));
    for (int number = 1;; ++number) {
        const auto which = number == 1 ? name : fmt::format("{}-{}", name, number);
        auto place = fs::path{folder} / (which + ending);
        std::error_code error;
        if (!fs::exists(fs::symlink_status(place, error))) {
            return place.string();
        }
    }
}

} // namespace

desk::Delivered print_for_desk(const desk::PrintWish& wish, const std::string& day,
                               const Settings& settings) {
    PrintOptions options;
    options.days = {day};
    options.look = wish.look;
    options.which = wish.which;
    return printed<PrintOptions>(std::move(options), wish.to, pdf_name(wish.what),
                                 [&](const PrintOptions& with, Console console) {
                                     return print_days(wish.what, with, settings, console);
                                 });
}

desk::Delivered reprint_for_desk(const desk::ReprintWish& wish, const Settings& settings) {
    ReprintOptions options;
    options.question = wish.question;
    options.look = wish.look;
    return printed<ReprintOptions>(std::move(options), wish.to,
                                   pdf_name(what_of(wish.question.kind)),
                                   [&](const ReprintOptions& with, Console console) {
                                       return reprint(with, settings, console);
                                   });
}

desk::Delivered door_list_for_desk(const service::Look& look, const desk::Destination& to,
                                   const Settings& settings) {
    PrintOptions options;
    options.look = look;
    options.look.part = {};
    return printed<PrintOptions>(std::move(options), to, pdf_name(What::DoorList),
                                 [&](const PrintOptions& with, Console console) {
                                     return print_frozen(with, settings, console);
                                 });
}

desk::Delivered back_up_for_desk(const std::string& folder, const Settings& settings) {
    return heard([&](Console console) {
        return archive_backup(free_place(folder, ".db"), settings, console);
    });
}

desk::Delivered export_for_desk(const std::string& folder, const Settings& settings) {
    return heard(
        [&](Console console) { return archive_export(free_place(folder, ""), settings, console); });
}

} // namespace thawslip::app
