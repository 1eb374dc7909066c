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

std::string caution_json(const kitchen::Caution& caution, const wording::Style& style) {
    return fmt::format(R"({{"id":{},"severity":{},"text":{}}})", json_string(caution.id),
                       json_string(word_for(caution.level)),
                       json_string(wording::say_caution(caution, style.language)));
}

std::string cautions_json(const std::vector<kitchen::Caution>& cautions,
                          const wording::Style& style) {
    std::vector<std::string> values;
    for (const auto& caution : cautions) {
        values.push_back(caution_json(caution, style));
    }
    return json_list(values);
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
    std::vector<std::string> packages;
    std::vector<std::string> cautions;
    for (const auto& plan : days.plans) {
        for (const auto& planned : plan.packages) {
            packages.push_back(package_json(planned, style));
        }
        for (const auto& caution : plan.cautions) {
            cautions.push_back(caution_json(caution, style));
        }
    }
    return fmt::format(R"({{"packages":{},"cautions":{}}})", json_list(packages),
                       json_list(cautions));
}

} // namespace thawslip::app
