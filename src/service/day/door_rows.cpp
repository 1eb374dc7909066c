#include "service/day/door_rows.h"

#include "base/shown.h"
#include "base/utf8.h"
#include "kitchen/allergens/added_allergens.h"
#include "kitchen/figures.h"
#include "typeset/paragraph.h"

#include <fmt/format.h>
#include <set>

namespace thawslip::service {

wording::DoorAllergens door_allergens(const kitchen::PlannedPackage& planned,
                                      const kitchen::AllergenList& list) {
    return {planned.allergens, planned.may_contain,
            kitchen::added_allergens(planned.package, planned.allergens, list)};
}

std::vector<wording::DoorRow> door_rows(const Days& days, const kitchen::AllergenList& list) {
    std::vector<wording::DoorRow> rows;
    for (const auto& plan : days.plans) {
        for (const auto& planned : plan.packages) {
            const auto& package = planned.package;
            wording::DoorRow row{planned.keep_until.date,
                                 planned.keep_until.basis,
                                 package.dish,
                                 package.servings,
                                 {},
                                 {}};
            row.thaw = package.thaw.method;
            row.thaw_lead = allowed_thaw(planned);
            row.raw = planned.raw;
            row.eaten_frozen = planned.served == kitchen::Served::Frozen;
            row.allergens = door_allergens(planned, list);
            row.place = package.place;
            for (const auto& bag : planned.bags) {
                row.bags.push_back({bag.id, bag.number});
            }
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

namespace {

/// Replaces every `character` of `text` by a question mark. \returns whether there was one
bool replace(std::string& text, char32_t character) {
    std::string wanted;
    append_utf8(wanted, character);
    bool found = false;
    for (auto at = text.find(wanted); at != std::string::npos; at = text.find(wanted, at)) {
        text.replace(at, wanted.size(), "?");
        found = true;
    }
    return found;
}

/// The name with "?" for what no face has.
std::string settable(const std::string& name, const typeset::FontSet& fonts) {
    auto text = shown(name);
    for (auto set = typeset::prepare({{text, {}}}, fonts); !set;
         set = typeset::prepare({{text, {}}}, fonts)) {
        if (!replace(text, set.fault().character)) {
            text = "?";
        }
    }
    return text;
}

} // namespace

Messages make_settable(std::vector<wording::DoorRow>& rows, const typeset::FontSet& fonts) {
    Messages messages;
    std::set<std::string> said;
    for (auto& row : rows) {
        for (auto* name : {&row.dish, &row.place}) {
            auto text = settable(*name, fonts);
            if (text != *name && said.insert(*name).second) {
                messages.caution(
                    fmt::format("the name \"{}\" holds what no face has, and stands on "
                                "the list as \"{}\"",
                                *name, text));
            }
            *name = std::move(text);
        }
    }
    return messages;
}

} // namespace thawslip::service
