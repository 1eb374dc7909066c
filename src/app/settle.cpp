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

Diagnostic question(const Days& days, std::size_t day, const archive::Doubt& doubt) {
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
    asked.hints.emplace_back("--new-batch if they are others: they get ids of their own");
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

/// \returns the batches of every day; nothing where something must be answered first
std::optional<Batches> batches_of(archive::Archive& archive, const Days& days,
                                  const archive::WhichBatch& which, Console console) {
    Batches batches;
    Diagnostics asked;
    bool fits = false;
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        auto record = record_of(days, day);
        record.station = station_now().name;
        auto settled = archive.settle(record, which);
        for (const auto& doubt : settled.doubts) {
            asked.push_back(question(days, day, doubt));
        }
        fits = fits || settled.answer_fits;
        batches.push_back(std::move(settled.batches));
    }
    print(console.err, asked, days.documents);
    if (!fits) {
        console.err << fmt::format("error: bag {} is of no dish that is described here\n",
                                   which.bag);
    }
    return asked.empty() && fits ? std::optional{std::move(batches)} : std::nullopt;
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
    return read_days(texts, by);
}

std::optional<archive::Archive> archive_to_ask(const Settings& settings) {
    try {
        return existing_archive(settings, archive::Mode::Read);
    } catch (const SystemFailure& failure) {
        throw SystemFailure{fmt::format("nothing was printed, for the ids of the bags stand in the "
                                        "archive: {}\n    hint: print with --no-archive to do "
                                        "without",
                                        failure.what())};
    }
}

} // namespace

std::optional<Days> settle(const Days& planned, const PrintOptions& options,
                           const Settings& settings, Console console) {
    auto days = planned;
    if (settings.record_prints && options.record != Record::No) {
        auto archive = archive_to_ask(settings);
        if (!archive && options.which.kind == Kind::OfBag) {
            console.err << "error: nothing has been printed yet, so no bag is known\n";
            return std::nullopt;
        }
        if (archive) {
            const auto which = answer(*archive, options.which, console);
            const auto batches =
                which ? batches_of(*archive, planned, *which, console) : std::nullopt;
            if (!batches) {
                return std::nullopt;
            }
            if (!are_planned(planned, *batches)) {
                days = planned_anew(planned, *batches, settings);
            }
        }
    }
    refuse_shared_ids(days);
    return days;
}

} // namespace thawslip::app
