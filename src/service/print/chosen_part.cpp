#include "service/print/chosen_part.h"

#include "service/freezer/bags.h"
#include "service/freezer/gone_bags.h"
#include "service/print/printed_bags.h"

#include <fmt/format.h>
#include <set>

namespace thawslip::service {

int copies_of(What what, const Part& part, const Settings& settings) {
    return part.copies.value_or(settings_of(what, settings).copies.value_or(1));
}

std::string why_nothing(const Job& job, const Part& part) {
    if (job.what == What::Shopping && !part.only_new) {
        return "no ingredient is listed";
    }
    if (job.noun == "list") {
        return part.only_new ? "each bag has its label" : "there is no bag";
    }
    return part.only_new ? fmt::format("each bag has its {}", job.noun)
                         : "no dish has a finishing ingredient";
}

PartSource known_bags(What what, const Days& days, const Surroundings& around) {
    PartSource source;
    source.newest_id = [&around](const std::string& id) {
        auto archive = around.ids.archive ? around.ids.archive() : std::nullopt;
        const auto bag = archive ? archive->bag(id) : std::nullopt;
        return bag ? bag->id : id;
    };
    source.printed = [&around, &days, what] {
        auto archive = around.ids.archive ? around.ids.archive() : std::nullopt;
        return archive ? printed_already(*archive, what, days) : std::set<std::string>{};
    };
    return source;
}

namespace {

/// The days' bags that are noted as eaten, discarded or never filled: what has no label yet may be
/// filled still.
std::set<std::string> gone_among(const Days& days, const Surroundings& around) {
    std::set<std::string> gone;
    if (auto archive = around.ids.archive ? around.ids.archive() : std::nullopt) {
        for (const auto& id : bag_ids(days)) {
            const auto bag = archive->bag(id);
            if (bag && is_gone(*bag) && !is_unprinted(*archive, *bag)) {
                gone.insert(id);
            }
        }
    }
    return gone;
}

} // namespace

Outcome<Chosen> choose_part(What what, const Days& days, const Part& part, const Settings& settings,
                            const Surroundings& around) {
    Outcome<Chosen> outcome;
    Chosen chosen{std::nullopt, copies_of(what, part, settings)};
    if (!is_whole(part)) {
        auto bags = bags_of_part(bags_in(days), part, known_bags(what, days, around));
        outcome.messages = std::move(bags.messages);
        if (!bags) {
            return outcome;
        }
        chosen.bags = std::move(bags.value);
    }
    if (what == What::DoorList || what == What::Lists) {
        chosen.gone = gone_among(days, around);
    }
    outcome.value = std::move(chosen);
    return outcome;
}

} // namespace thawslip::service
