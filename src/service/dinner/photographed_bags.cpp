#include "service/dinner/photographed_bags.h"

#include "base/list.h"
#include "code/message.h"
#include "intake/vessel.h"
#include "kitchen/bag_id.h"
#include "kitchen/measures/quantity.h"
#include "service/freezer/packages_of_bags.h"
#include "service/read/read_bags.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

using kitchen::PlannedPackage;

std::vector<kitchen::Finish> finish_of(const code::Message& message) {
    std::vector<kitchen::Finish> finish;
    for (const auto& addition : message.additions) {
        kitchen::Finish one;
        if (auto quantity = kitchen::parse_quantity(addition.what); quantity.ok()) {
            one.add = std::move(quantity).value();
        } else {
            one.add.item = addition.what;
            one.add.as_written = addition.what;
        }
        one.when = addition.when;
        one.bag = addition.bag;
        finish.push_back(std::move(one));
    }
    return finish;
}

std::optional<kitchen::Cook> cook_of(const code::Message& message) {
    const auto& cooking = message.cooking;
    if (cooking == code::Cooking{} && message.steps.empty()) {
        return std::nullopt;
    }
    kitchen::Cook cook;
    cook.in = cooking.in;
    cook.setting = cooking.setting;
    cook.vessel = intake::vessel_of(cook.in, cook.setting);
    cook.time = cooking.time;
    cook.steps = message.steps;
    if (cooking.until) {
        const double degrees = cooking.until->tenths / 10.0;
        const bool celsius = cooking.until->scale == kitchen::TemperatureScale::Celsius;
        cook.until = {celsius ? degrees : (degrees - 32.0) / 1.8, cooking.until->scale};
    }
    return cook;
}

kitchen::ThawLead lead_of(kitchen::ThawMethod method, const kitchen::TimeRange& time) {
    kitchen::ThawLead lead;
    lead.method = method;
    lead.lead = time.high;
    lead.soonest = time.low;
    return lead;
}

/// The same by another way to thaw that the code has. Its cooking time is of the first way: from
/// thawed to frozen, the code may have another; back, none is known.
PlannedPackage by_another(PlannedPackage planned, const code::OtherThaw& other) {
    auto& thaw = planned.package.thaw;
    const auto from_frozen = kitchen::ThawMethod::FromFrozen;
    if (planned.package.cook && (thaw.method == from_frozen) != (other.thaw == from_frozen)) {
        planned.package.cook->time = other.cook_time;
    }
    thaw.method = other.thaw;
    thaw.note.clear();
    planned.package.placing = other.placing;
    planned.thaw_lead.reset();
    if (other.thaw_time) {
        planned.thaw_lead = lead_of(other.thaw, *other.thaw_time);
    }
    const std::chrono::days within{other.cook_within_days.value_or(0)};
    planned.after_thawing = kitchen::DaysLeft{within, within, {}};
    return planned;
}

/// What the code says, as far as a plan goes. How long it keeps thawed counts as the same day
/// where nothing is said.
PlannedPackage package_of(const code::Message& message) {
    PlannedPackage planned;
    planned.package.dish = message.dish;
    planned.package.servings = message.servings.value_or(1);
    planned.package.thaw.method = message.thaw.value_or(kitchen::ThawMethod::Refrigerator);
    if (code::is_eaten_frozen(message)) {
        planned.package.thaw.method = kitchen::ThawMethod::FromFrozen;
        planned.served = kitchen::Served::Frozen;
    }
    planned.package.thaw.note = message.thaw_note;
    planned.package.cook = cook_of(message);
    planned.package.note = message.note;
    planned.package.placing = message.placing;
    planned.made = message.made.value_or(kitchen::Date{});
    if (message.keep_until) {
        planned.keep_until.date = message.keep_until->date;
        planned.keep_until.basis = message.keep_until->basis;
    }
    planned.finish = finish_of(message);
    planned.package.finish = planned.finish;
    planned.allergens = kitchen::read_allergens(message.allergens);
    planned.may_contain = kitchen::read_allergens(message.may_contain);
    planned.raw = message.raw;
    if (message.thaw && message.thaw_time) {
        planned.thaw_lead = lead_of(*message.thaw, *message.thaw_time);
    }
    const std::chrono::days within{message.cook_within_days.value_or(0)};
    planned.after_thawing = kitchen::DaysLeft{within, within, {}};
    planned.bags = {{message.bag_id, 1, 1}};
    for (const auto& other : message.other_thaws) {
        auto way = by_another(planned, other);
        way.other_thaws.clear();
        planned.other_thaws.push_back(std::move(way));
    }
    return planned;
}

/// What a plan needs and the code does not say.
std::vector<std::string> missing_in(const code::Message& message) {
    const bool takes_time = message.thaw && *message.thaw != kitchen::ThawMethod::FromFrozen;
    const bool is_eaten_frozen = code::is_eaten_frozen(message);
    const std::pair<bool, const char*> parts[] = {
        {!message.thaw && !is_eaten_frozen, "how it is thawed (in the refrigerator is taken)"},
        {takes_time && !message.thaw_time, "how long it thaws"},
        {takes_time && !message.cook_within_days,
         "how long it keeps once thawed (the same day is taken)"},
        {!message.cooking.time && !is_eaten_frozen, "how long it cooks"},
        {!message.cooking.until && !is_eaten_frozen, "how hot it must get"},
        {!message.keep_until, "by when it is best"},
        {message.extent == code::Extent::SeeCard, "what the cook-day card says besides"}};
    std::vector<std::string> missing;
    for (const auto& [is_missing, what] : parts) {
        if (is_missing) {
            missing.emplace_back(what);
        }
    }
    return missing;
}

void report_code(const code::Message& message, Messages& messages) {
    const auto missing = missing_in(message);
    messages.caution(
        fmt::format("bag {} of \"{}\" is not in this archive: planned from its code alone{}",
                    message.bag_id, message.dish,
                    missing.empty()
                        ? ""
                        : fmt::format(", which does not say {}", fmt::join(missing, "; "))),
        {"the label and the cards come first"});
}

void report_cautions(const code::Message& message, Messages& messages) {
    for (const auto& caution : message.cautions) {
        messages.caution(fmt::format("{}: {}", message.dish, caution));
    }
}

using Packages = std::vector<PlannedPackage>;

/// The bag's id in a code, where it has one at all.
std::string id_in(const std::string& text) {
    if (const auto message = code::parse(text); message.ok()) {
        return message.value().bag_id;
    }
    const auto id = kitchen::parse_bag_id(text);
    return id.ok() ? id.value() : std::string{};
}

/// Bags that the archive knows: those of one dish are one package, as where their ids are typed.
void add_known(archive::Archive& archive, const std::vector<std::string>& ids,
               Outcome<Packages>& outcome) {
    auto known = packages_to_eat(archive, {{joined(ids, ", ")}, 1});
    outcome.messages.add(known.messages);
    std::ranges::move(known.value.value_or(Packages{}), std::back_inserter(*outcome.value));
}

/// Bags that the archive does not know, by their codes alone. Those whose codes say the same but
/// for the id are one package.
class Unknown {
public:
    void add(const std::string& text, Messages& messages) {
        auto message = code::parse(text);
        if (!message.ok()) {
            messages.error(message.fault().message);
            return;
        }
        auto said = std::move(message).value();
        report_code(said, messages);
        auto package = package_of(said);
        const auto bag = package.bags.front();
        said.bag_id.clear();
        const auto same = std::ranges::find(said_, said);
        if (same == said_.end()) {
            report_cautions(said, messages);
            packages_.push_back(std::move(package));
            said_.push_back(std::move(said));
            return;
        }
        auto& bags = packages_[static_cast<std::size_t>(same - said_.begin())].bags;
        if (std::ranges::find(bags, bag.id, &kitchen::Bag::id) == bags.end()) {
            bags.push_back(bag);
        }
    }

    Packages packages() && { return std::move(packages_); }

private:
    std::vector<code::Message> said_; ///< of each package, without an id
    Packages packages_;
};

} // namespace

Outcome<std::vector<PlannedPackage>> packages_of_codes(archive::Archive* archive,
                                                       std::span<const std::string> texts) {
    Outcome<Packages> outcome{Packages{}, {}};
    std::vector<std::string> known;
    Unknown unknown;
    for (const auto& text : texts) {
        auto id = id_in(text);
        if (archive != nullptr && !id.empty() && archive->bag(id)) {
            known.push_back(std::move(id));
        } else {
            unknown.add(text, outcome.messages);
        }
    }
    if (!known.empty()) {
        add_known(*archive, known, outcome);
    }
    std::ranges::move(std::move(unknown).packages(), std::back_inserter(*outcome.value));
    if (outcome.messages.have_errors()) {
        outcome.value.reset();
    }
    return outcome;
}

} // namespace thawslip::service
