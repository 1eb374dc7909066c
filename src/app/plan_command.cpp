#include "app/archive_place.h"
#include "app/clock.h"
#include "app/commands.h"
#include "app/commands/print_job.h"
#include "app/files/data_folder.h"
#include "app/files/day_files.h"
#include "app/files/output_guard.h"
#include "app/files/whole_file.h"
#include "app/photo_texts.h"
#include "json/answers.h"
#include "service/dinner/photographed_bags.h"
#include "service/dinner/plan_sheet.h"
#include "service/dinner/plan_text.h"
#include "service/freezer/packages_of_bags.h"
#include "service/messages.h"
#include "service/print/own_files.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

using Packages = std::vector<kitchen::PlannedPackage>;

/// The packages of the days; what is wrong with a description is said, and then there are none.
std::optional<Packages> packages_of_days(const PlanOptions& options, const Settings& settings,
                                         Console console) {
    const auto days = read_days(options.days, settings);
    service::Messages messages;
    messages.add(days.diagnostics, days.documents);
    console.err << to_text(messages);
    if (messages.have_errors()) {
        return std::nullopt;
    }
    return packages_of(days, options.bags);
}

std::optional<Packages> packages_of_archive(const PlanOptions& options, const Settings& settings,
                                            Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << fmt::format("error: there is no file \"{}\", and nothing has been printed "
                                   "yet, so no bag is known\n",
                                   options.days.front());
        return std::nullopt;
    }
    auto packages = service::packages_to_eat(*archive, {options.days, options.bags});
    console.err << to_text(packages.messages);
    return std::move(packages.value);
}

/// The bags whose codes are in photographs.
std::optional<Packages> packages_of_photos(const PlanOptions& options, const Settings& settings,
                                           Console console) {
    std::vector<std::string> texts;
    for (const auto& file : options.days) {
        const auto found = photo_texts(file);
        console.err << to_text(found.messages);
        if (!found) {
            return std::nullopt;
        }
        texts.insert(texts.end(), found.value->begin(), found.value->end());
    }
    auto archive = existing_archive(settings, archive::Mode::Read);
    auto packages = service::packages_of_codes(archive ? &*archive : nullptr, texts);
    console.err << to_text(packages.messages);
    return std::move(packages.value);
}

bool names_a_file(const std::string& word) {
    std::error_code error;
    return service::is_file_name(word) || std::filesystem::is_regular_file(word, error);
}

/// What may be planned: of photographs, of days, or of the archive's bags where no file is named.
std::optional<Packages> packages_for(const PlanOptions& options, const Settings& settings,
                                     Console console) {
    if (std::ranges::all_of(options.days, names_a_photo)) {
        return packages_of_photos(options, settings, console);
    }
    return std::ranges::none_of(options.days, names_a_file)
               ? packages_of_archive(options, settings, console)
               : packages_of_days(options, settings, console);
}

/// Reads one of the two times; says what is wrong with it.
std::optional<kitchen::LocalMinute> read_time(const std::string& text, std::string_view option,
                                              std::ostream& err) {
    const auto time = kitchen::parse_local_minute(text);
    if (!time) {
        err << fmt::format("error: {} \"{}\" is not a date and time; expected one such as "
                           "\"2026-12-03 18:30\"\n",
                           option, text);
    }
    return time;
}

/// A local time read without knowing its zone: at most a day off.
kitchen::Instant roughly(kitchen::LocalMinute local) {
    return kitchen::Instant{local.time_since_epoch()};
}

kitchen::LocalClock clock_around(kitchen::LocalMinute eat, kitchen::Instant now) {
    const auto span = service::clock_span(eat, now);
    return system_clock(span.from, span.to);
}

service::DinnerQuestion question_of(const PlanOptions& options, kitchen::LocalMinute eat,
                                    std::optional<kitchen::LocalMinute> as_if,
                                    const Settings& settings) {
    service::DinnerQuestion question{options.dish, eat, now(), {}, settings.kitchen.thaw};
    const bool is_of_days = std::ranges::any_of(options.days, names_a_file) &&
                            !std::ranges::all_of(options.days, names_a_photo);
    question.of_each = is_of_days ? options.bags : 1; // of the archive's bags it is said already
    question.clock = clock_around(eat, as_if ? roughly(*as_if) : question.now);
    if (as_if) {
        question.now = read_clock(question.clock, *as_if).instant;
    }
    return question;
}

void write_calendar(const service::DinnerPlan& plan, const std::string& file, Console console) {
    if (file.empty()) {
        return;
    }
    const auto calendar = dinner_calendar(plan);
    console.err << to_text(calendar.messages);
    if (calendar) {
        write_whole_file(file, *calendar.value);
    }
}

/// Draws the plan, where that is asked for.
ExitStatus draw_sheet(const service::DinnerPlan& plan, const PlanOptions& options,
                      const Settings& settings, Console console) {
    if (options.sheet.output.empty() && !options.sheet.printer) {
        return ExitStatus::Done;
    }
    const auto printing = plan_sheet(plan, options.sheet.look, settings, surroundings());
    console.err << to_text(printing.messages);
    // What the drawing's place is said on stays apart from the answer.
    return printing ? put_out(*printing.value, options.sheet, settings, {console.err, console.err})
                    : ExitStatus::Refused;
}

/// The plan in words or in JSON, unless its drawing goes to standard output.
void answer(const service::DinnerPlan& plan, const PlanOptions& options,
            const wording::Style& style, Console console) {
    if (options.sheet.output != "-") {
        console.out << (options.answer == AnswerAs::Json ? json::plan(plan, style) + "\n"
                                                         : service::plan_text(plan, style));
    }
}

/// What the plan is drawn into, and from.
Output sheet_output(const PlanOptions& options) {
    auto sheet = options.sheet;
    sheet.days = options.days;
    return output_of(sheet);
}

std::optional<ExitStatus> refuse_outputs(const PlanOptions& options, const Settings& settings,
                                         Console console) {
    const auto refused =
        refuse_output({options.calendar, {".ics"}, options.days}, settings, console);
    return refused ? refused : refuse_output(sheet_output(options), settings, console);
}

} // namespace

ExitStatus plan(const PlanOptions& options, const Settings& settings, Console console) {
    const auto eat = read_time(options.eat, "--eat", console.err);
    const auto as_if = options.now.empty() ? std::optional<kitchen::LocalMinute>{}
                                           : read_time(options.now, "--now", console.err);
    if (!eat || (!as_if && !options.now.empty())) {
        return ExitStatus::Usage;
    }
    if (const auto refused = refuse_outputs(options, settings, console)) {
        return *refused;
    }
    const auto packages = packages_for(options, settings, console);
    if (!packages) {
        return ExitStatus::Refused;
    }
    const auto style = style_of(settings);
    const auto planned =
        service::dinner_plan(*packages, question_of(options, *eat, as_if, settings), style);
    console.err << to_text(planned.messages);
    if (!planned) {
        return ExitStatus::Refused;
    }
    const auto& plan = *planned.value;
    answer(plan, options, style, console);
    write_calendar(plan, options.calendar, console);
    const auto drawn = draw_sheet(plan, options, settings, console);
    return can_be_done(plan.line) || drawn != ExitStatus::Done ? drawn : ExitStatus::Refused;
}

} // namespace thawslip::app
