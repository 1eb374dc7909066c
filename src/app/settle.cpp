#include "app/settle.h"

#include "app/archive_bags.h"
#include "app/archive_place.h"
#include "app/clock.h"
#include "app/day_record.h"
#include "app/report.h"
#include "app/station.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

using Kind = archive::WhichBatch::Kind;

std::string hint_of(const archive::KnownBatch& known) {
    return fmt::format("--same-batch {} if these are the bags of that label: {}{} {} that serve{} "
                       "{}, printed {}{}",
                       known.bag, known.kitchen.empty() ? "" : known.kitchen + ", ", known.bags,
                       known.bags == 1 ? "bag" : "bags", known.bags == 1 ? "s" : "", known.servings,
                       known.recorded.substr(0, 10),
                       known.file.empty() ? "" : " from " + known.file);
}

Diagnostic question(const Days& days, std::size_t day, const archive::Doubt& doubt, IdsFor what) {
    const auto& planned = days.plans[day].packages[doubt.package];
    const auto key = planned.package.where.key("dish");
    Diagnostic asked{Severity::Error,
                     days.documents[day].place(key),
                     key,
                     fmt::format("bags of \"{}\", made {}, were printed before, and it is not sure "
                                 "whether these are the same",
                                 planned.package.dish, kitchen::to_iso(planned.made)),
                     {}};
    for (const auto& known : doubt.known) {
        asked.hints.push_back(hint_of(known));
    }
    asked.hints.emplace_back(
        what == IdsFor::Lists
            ? "if they are others, print their labels first: thawslip labels --new-batch"
            : "--new-batch if they are others: they get ids of their own");
    return asked;
}

/// The bag that the cook named, by the id it has now. \returns nothing where there is none
std::optional<archive::WhichBatch> answer(archive::Archive& archive, archive::WhichBatch which,
                                          Console console) {
    if (which.kind == Kind::OfBag) {
        const auto bags = bags_by_id(archive, {which.bag}, console);
        if (!bags) {
            return std::nullopt;
        }
        which.bag = bags->front().id;
    }
    return which;
}

using Batches = std::vector<std::vector<kitchen::Batch>>;

/// What the archive says of days.
struct Answer {
    Batches batches;   ///< of every day; where it is asked which they are, those of new bags
    Diagnostics asked; ///< what only the cook can know
    bool fits = false; ///< the bag that was named is of a dish that is described
};

Answer ask(archive::Archive& archive, const Days& days, const archive::WhichBatch& which,
           IdsFor what) {
    Answer answer;
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        auto record = record_of(days, day);
        record.station = station_now().name;
        auto settled = archive.settle(record, which);
        for (const auto& doubt : settled.doubts) {
            answer.asked.push_back(question(days, day, doubt, what));
        }
        answer.fits = answer.fits || settled.answer_fits;
        answer.batches.push_back(std::move(settled.batches));
    }
    return answer;
}

bool are_planned(const Days& days, const Batches& batches) {
    for (std::size_t day = 0; day < batches.size(); ++day) {
        if (!std::ranges::equal(days.plans[day].packages, batches[day], {},
                                &kitchen::PlannedPackage::batch)) {
            return false;
        }
    }
    return true;
}

/// The same days again, planned with the batches that they are.
Days planned_anew(const Days& days, const Batches& batches, const Settings& settings) {
    std::vector<DayText> texts;
    for (std::size_t day = 0; day < batches.size(); ++day) {
        texts.push_back({days.documents[day].file(), days.as_written[day], batches[day]});
    }
    auto by = settings;
    by.kitchen.today = today();
    return plan_days(texts, by);
}

Days with_batches(const Days& planned, const Batches& batches, const Settings& settings) {
    auto days = are_planned(planned, batches) ? planned : planned_anew(planned, batches, settings);
    refuse_shared_ids(days);
    return days;
}

/// The archive that a print goes into, or that lists take their ids from.
std::optional<archive::Archive> archive_needed(const Settings& settings, IdsFor what) {
    if (what == IdsFor::Lists && archive_file_if_known(settings).empty()) {
        return std::nullopt; // no place, no archive: nothing has been printed
    }
    try {
        return existing_archive(settings, archive::Mode::Read);
    } catch (const SystemFailure& failure) {
        throw SystemFailure{fmt::format("nothing was printed, for the ids of the bags stand in the "
                                        "archive: {}\n    hint: {}",
                                        failure.what(),
                                        what == IdsFor::Lists
                                            ? "name another archive with --archive"
                                            : "print with --no-archive to do without")};
    }
}

enum class IfUnreadable { Say, BeSilent };

/// The archive as a copy, for what it is not to remember: neither it nor its schema changes.
std::optional<archive::Archive> archive_to_look_into(const Settings& settings, IfUnreadable how,
                                                     Console console) {
    const auto file = archive_file_if_known(settings);
    if (file.empty()) {
        return std::nullopt;
    }
    auto archive = archive::Archive::open(file, archive::Mode::Copy);
    if (archive) {
        return std::move(archive).value();
    }
    if (archive.fault().kind != archive::ArchiveFault::Kind::Missing && how == IfUnreadable::Say) {
        console.err << fmt::format("caution: these ids may be on other bags already, for the "
                                   "archive cannot be asked: {}\n",
                                   archive.fault().message);
    }
    return std::nullopt;
}

std::optional<archive::Archive> archive_for(const PrintOptions& options, const Settings& settings,
                                            Console console, IdsFor what) {
    if (options.record == Record::Trial) {
        return archive_to_look_into(settings, IfUnreadable::BeSilent, console);
    }
    const bool remembers = settings.record_prints && options.record == Record::AsSettingsSay;
    return remembers || what == IdsFor::Lists
               ? archive_needed(settings, what)
               : archive_to_look_into(settings, IfUnreadable::Say, console);
}

} // namespace

std::optional<Days> settle(const Days& planned, const PrintOptions& options,
                           const Settings& settings, Console console, IdsFor what) {
    auto archive = archive_for(options, settings, console, what);
    if (!archive) {
        if (options.which.kind == Kind::OfBag) {
            console.err << "error: nothing has been printed yet, so no bag is known\n";
            return std::nullopt;
        }
        auto days = planned;
        refuse_shared_ids(days);
        return days;
    }
    const auto which = answer(*archive, options.which, console);
    if (!which) {
        return std::nullopt;
    }
    auto [batches, asked, fits] = ask(*archive, planned, *which, what);
    if (!fits) {
        console.err << fmt::format("error: bag {} is of no dish that is described here\n",
                                   which->bag);
    }
    if (options.record == Record::Trial) {
        asked.clear();
    }
    print(console.err, asked, planned.documents);
    return asked.empty() && fits ? std::optional{with_batches(planned, batches, settings)}
                                 : std::nullopt;
}

Days settle_to_look(const Days& planned, const Settings& settings, Console console) {
    auto archive = archive_to_look_into(settings, IfUnreadable::Say, console);
    if (!archive) {
        auto days = planned;
        refuse_shared_ids(days);
        return days;
    }
    auto [batches, asked, fits] = ask(*archive, planned, {}, IdsFor::Prints);
    for (auto& one : asked) {
        one.severity = Severity::Caution;
        for (auto& hint : one.hints) {
            hint = "thawslip labels " + hint;
        }
        one.message += "; labels asks, and the ids told here are those that others would get";
    }
    print(console.err, asked, planned.documents);
    return with_batches(planned, batches, settings);
}

} // namespace thawslip::app
