#include "app/check_json.h"

#include "app/json.h"
#include "wording/fields.h"

#include <fmt/format.h>

namespace thawslip::app {
namespace {

std::string_view word_for(kitchen::CautionLevel level) {
    switch (level) {
    case kitchen::CautionLevel::Check: return "check";
    case kitchen::CautionLevel::Card: return "card";
    case kitchen::CautionLevel::LabelAndCard: return "label and card";
    case kitchen::CautionLevel::Refuse: break;
    }
    return "refuse";
}

/// `[a,b]` of values that are JSON already.
template <class Values, class ToJson>
std::string list_in_json(const Values& values, const ToJson& to_json) {
    std::string list;
    for (const auto& value : values) {
        list += (list.empty() ? "" : ",") + to_json(value);
    }
    return "[" + list + "]";
}

std::string cautions_json(const std::vector<kitchen::Caution>& cautions,
                          const wording::Style& style) {
    return list_in_json(cautions, [&style](const kitchen::Caution& caution) {
        return fmt::format(R"({{"id":{},"severity":{},"text":{}}})", json_string(caution.id),
                           json_string(word_for(caution.level)),
                           json_string(wording::say_caution(caution, style.language)));
    });
}

std::string package_json(const kitchen::PlannedPackage& planned, const wording::Style& style) {
    std::vector<std::string> bags;
    for (const auto& bag : planned.bags) {
        bags.push_back(bag.id);
    }
    return fmt::format(R"({{"dish":{},"made":{},"use_by":{},"bags":{},"cautions":{}}})",
                       json_string(planned.package.dish),
                       json_string(kitchen::to_iso(planned.made)),
                       json_string(kitchen::to_iso(planned.keep_until.date)), json_strings(bags),
                       cautions_json(planned.cautions, style));
}

} // namespace

std::string check_json(const Days& days, const wording::Style& style) {
    std::vector<kitchen::PlannedPackage> packages;
    std::vector<kitchen::Caution> of_days;
    for (const auto& plan : days.plans) {
        packages.insert(packages.end(), plan.packages.begin(), plan.packages.end());
        of_days.insert(of_days.end(), plan.cautions.begin(), plan.cautions.end());
    }
    const auto all = list_in_json(packages, [&style](const kitchen::PlannedPackage& planned) {
        return package_json(planned, style);
    });
    return fmt::format(R"({{"packages":{},"cautions":{}}})", all, cautions_json(of_days, style));
}

} // namespace thawslip::app
