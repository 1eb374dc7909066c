#include "service/print/chosen_part.h"

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

Outcome<Chosen> choose_part(What what, const Days& days, const Part& part, const Settings& settings,
                            const Surroundings& around) {
    Outcome<Chosen> outcome;
    const int copies = copies_of(what, part, settings);
    if (is_whole(part)) {
        outcome.value = Chosen{std::nullopt, copies};
        return outcome;
    }
    auto bags = bags_of_part(bags_in(days), part, known_bags(what, days, around));
    outcome.messages = std::move(bags.messages);
    if (bags) {
        outcome.value = Chosen{std::move(bags.value), copies};
    }
    return outcome;
}

} // namespace thawslip::service
