#include "service/record/settle.h"

#include "base/list.h"
#include "service/day/in_freezer.h"
#include "service/freezer/bags.h"
#include "service/record/day_record.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace thawslip::service {
namespace {

std::string hint_of(const archive::KnownBatch& known) {
    return fmt::format("--same-batch {} if these are the bags of that label: {}{} {} that serve{} "
                       "{}, printed {}{}",
                       known.bag, known.kitchen.empty() ? "" : known.kitchen + ", ", known.bags,
                       known.bags == 1 ? "bag" : "bags", known.bags == 1 ? "s" : "", known.servings,
                       known.recorded.substr(0, 10),
                       known.file.empty() ? "" : " from " + known.file);
}

Diagnostic question(const Days& days, std::size_t day, const archive::Doubt& doubt, Doubts doubts) {
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
        doubts == Doubts::AskForLists
            ? "if they are others, print their labels first: thawslip labels --new-batch"
            : "--new-batch if they are others: they get ids of their own");
    return asked;
}

/// The same where nobody is asked, for nothing is printed.
Diagnostic mentioned(Diagnostic question) {
    question.severity = Severity::Caution;
    for (auto& hint : question.hints) {
        hint.insert(0, "thawslip labels ");
    }
    question.message += "; labels asks, and the ids told here are those that others would get";
    return question;
}

using Batches = std::vector<std::vector<kitchen::Batch>>;

/// What the archive says of days.
struct Answer {
    Batches batches;   ///< of every day; where it is asked which they are, those of new bags
    Diagnostics asked; ///< what only the cook can know
    std::set<std::string> fits; ///< of the bags that were named: of a dish that is described
};

archive::Settled settled_in(archive::Archive& archive, const Days& days, std::size_t day,
                            const archive::WhichBatch& which, const IdSource& ids) {
    auto record = record_of(days, day);
    record.station = ids.station;
    return archive.settle(record, which);
}

Answer ask(archive::Archive& archive, const Days& days, const archive::WhichBatch& which,
           const IdSource& ids) {
    Answer answer;
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        auto settled = settled_in(archive, days, day, which, ids);
        for (const auto& doubt : settled.doubts) {
            answer.asked.push_back(question(days, day, doubt, ids.doubts));
        }
        answer.fits.merge(settled.fits);
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
Days planned_again(const Days& days, const Batches& batches, const Settings& settings) {
    auto texts = days.texts;
    for (std::size_t day = 0; day < batches.size(); ++day) {
        texts[day].batches = batches[day];
    }
    return plan_days(texts, settings);
}

Days with_batches(const Days& planned, const Batches& batches, const Settings& settings) {
    return are_planned(planned, batches) ? planned : planned_again(planned, batches, settings);
}

/// The batches that the archive has; nothing, and said in `messages`, where it must be asked first.
std::optional<Batches> batches_in(archive::Archive& archive, const Days& days, const IdSource& ids,
                                  Messages& messages) {
    const auto which = with_known_bags(archive, ids.which);
    messages.add(which.messages);
    if (!which) {
        return std::nullopt;
    }
    auto [batches, asked, fits] = ask(archive, days, *which.value, ids);
    bool all_fit = true;
    for (const auto& bag : which.value->bags) {
        if (!fits.contains(bag)) {
            all_fit = false;
            messages.error(fmt::format("bag {} is of no dish that is described here", bag));
        }
    }
    if (ids.doubts == Doubts::Ignore) {
        asked.clear();
    }
    if (ids.doubts == Doubts::Mention) {
        std::ranges::transform(asked, asked.begin(), mentioned);
    }
    messages.add(asked, days.documents);
    return all_fit && !has_errors(asked) ? std::optional{std::move(batches)} : std::nullopt;
}

/// The days with their ids; nothing, and said in `messages`, where something must be answered.
std::optional<Days> with_ids(const Days& planned, const IdSource& ids, const Settings& settings,
                             Messages& messages) {
    auto archive = ids.archive ? ids.archive() : std::nullopt;
    if (!archive && !ids.which.bags.empty()) {
        messages.error("nothing has been printed yet, so no bag is known");
        return std::nullopt;
    }
    if (!archive) {
        return planned;
    }
    const auto batches = batches_in(*archive, planned, ids, messages);
    if (!batches) {
        return std::nullopt;
    }
    auto days = with_batches(planned, *batches, settings);
    if (ids.stock == Stock::Noted) {
        note_in_freezer(days, *archive);
    }
    return days;
}

} // namespace

Outcome<Days> settle(const Days& planned, const IdSource& ids, const Settings& settings) {
    Outcome<Days> outcome;
    auto days = has_errors(planned.diagnostics)
                    ? planned
                    : with_ids(planned, ids, settings, outcome.messages);
    if (!days) {
        return outcome;
    }
    if (!has_errors(days->diagnostics)) {
        refuse_shared_ids(*days);
    }
    outcome.messages.add(days->diagnostics, days->documents);
    if (!has_errors(days->diagnostics)) {
        outcome.value = std::move(days);
    }
    return outcome;
}

Outcome<archive::WhichBatch> with_known_bags(archive::Archive& archive, archive::WhichBatch which) {
    auto bags = bags_by_id(archive, which.bags);
    if (bags) {
        which.bags = mapped(*bags.value, &archive::Bag::id);
        return {std::move(which), std::move(bags.messages)};
    }
    return {std::nullopt, std::move(bags.messages)};
}

std::vector<BatchQuestion> batch_questions(const Days& planned, const IdSource& ids) {
    std::vector<BatchQuestion> questions;
    auto archive = ids.archive && !has_errors(planned.diagnostics) ? ids.archive() : std::nullopt;
    const auto which = archive ? with_known_bags(*archive, ids.which).value : std::nullopt;
    for (std::size_t day = 0; which && day < planned.plans.size(); ++day) {
        for (auto& doubt : settled_in(*archive, planned, day, *which, ids).doubts) {
            const auto& package = planned.plans[day].packages[doubt.package];
            questions.push_back({package.package.dish, package.made, std::move(doubt.known)});
        }
    }
    return questions;
}

} // namespace thawslip::service
