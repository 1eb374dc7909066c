#include "service/archive/exchange.h"

#include "base/counted.h"
#include "service/archive/archive_days.h"
#include "service/freezer/packages_of_bags.h"

#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// Each as an error, with what helps behind the last one.
Messages errors(const std::vector<std::string>& texts, const std::string& hint) {
    Messages messages;
    for (const auto& text : texts) {
        messages.error(text,
                       &text == &texts.back() ? std::vector{hint} : std::vector<std::string>{});
    }
    return messages;
}

std::string hint_of_clashes(archive::Kitchens kitchens) {
    return std::string{kitchens == archive::Kitchens::MayDiffer
                           ? "--same-kitchen if both archives are of one kitchen; if they are of "
                             "two, "
                           : ""} +
           "what was left out needs new labels; with a kitchen_number of its own in the settings, "
           "or a name in its days, each kitchen prints ids of its own";
}

} // namespace

Outcome<archive::Contents> held_to_be_true(archive::Contents contents, const std::string& from,
                                           const Progress& progress) {
    auto wrong = held_against_days(contents, progress);
    if (wrong.empty()) {
        return {std::move(contents), {}};
    }
    for (auto& one : wrong) {
        one.insert(0, from + ": ");
    }
    return {{},
            errors(wrong, "nothing of it was added; where it comes from: thawslip archive repair")};
}

Outcome<archive::Contents> contents_to_merge(archive::Archive& other, const std::string& from,
                                             const Progress& progress) {
    archive::Contents contents;
    if (const auto wrong = other.check(contents); !wrong.empty()) {
        Outcome<archive::Contents> outcome;
        outcome.messages.error(fmt::format("{} is damaged: {}", from, wrong.front()));
        return outcome;
    }
    return held_to_be_true(std::move(contents), from, progress);
}

Outcome<archive::Contents> contents_to_export(archive::Archive& archive) {
    Outcome<archive::Contents> outcome;
    if (const auto day = archive.first_rotten_day()) {
        refuse_rotten(*day, outcome.messages, "; nothing was written");
        return outcome;
    }
    outcome.value = archive.contents();
    return outcome;
}

Outcome<archive::Merged> add_contents(archive::Archive& archive, const archive::Contents& contents,
                                      const std::string& from, archive::Kitchens kitchens) {
    Outcome<archive::Merged> outcome{archive.merge(contents, kitchens), {}};
    const auto& clashes = outcome.value->clashes;
    for (const auto& id : clashes) {
        outcome.messages.caution(fmt::format("bag {} of {} was left out: here that id is on "
                                             "another bag, or on one that may be another",
                                             id, from),
                                 &id == &clashes.back() ? std::vector{hint_of_clashes(kitchens)}
                                                        : std::vector<std::string>{});
    }
    return outcome;
}

Messages faults_of(archive::Archive& archive, const Progress& progress) {
    auto wrong = archive.check();
    if (wrong.empty()) {
        for (const auto& one : held_against_days(archive, progress)) {
            wrong.push_back(one.what);
        }
    }
    return errors(wrong, "put a backup in its place with: thawslip archive restore FILE; without "
                         "one: thawslip archive repair");
}

Messages left_behind(archive::Archive& before, archive::Archive& now, const std::string& kept) {
    const auto merged = now.merge(before.contents());
    const std::pair<int, const char*> parts[] = {
        {merged.bags + static_cast<int>(merged.clashes.size()), "bag"},
        {merged.states, "later state"},
        {merged.days, "description"},
        {merged.prints, "print"}};
    std::string missing;
    for (const auto& [count, noun] : parts) {
        if (count > 0) {
            missing += (missing.empty() ? "" : ", ") + counted(count, noun);
        }
    }
    Messages messages;
    if (!missing.empty()) {
        messages.caution("not in this one, but in the archive of before: " + missing,
                         {fmt::format("thawslip archive merge {} adds them; without that, ids of "
                                      "its bags are given again",
                                      kept)});
    }
    return messages;
}

} // namespace thawslip::service
