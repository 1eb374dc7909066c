#include "app/check_json.h"

#include "app/figures_json.h"
#include "app/json.h"
#include "kitchen/figures.h"
#include "wording/fields.h"

#include <fmt/format.h>

namespace thawslip::app {
namespace {

std::string_view word_for(kitchen::CautionLevel level) {
    switch (level) {
    case kitchen::CautionLevel::Check: return "check";
    case kitchen::CautionLevel::Report: return "report";
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
    return fmt::format(R"({{"dish":{},"raw":{},"made":{},"use_by":{},"bags":{}{},"cautions":{}}})",
                       json_string(planned.package.dish), planned.raw,
                       json_string(kitchen::to_iso(planned.made)),
                       json_string(kitchen::to_iso(planned.keep_until.date)), json_strings(bags),
                       thaw_members(thaw_time(planned), cook_within(planned)),
                       cautions_json(planned.cautions, style));
}

std::string batch_json(const kitchen::FreezerBatch& batch, kitchen::Date day) {
    return fmt::format(R"({{"day":{},"grams":{:.0f},"bags":{}}})",
                       json_string(kitchen::to_iso(day)), batch.weight.grams,
                       json_strings(batch.bags));
}

/// Which bags go into the freezer on which day, and which have no place in it.
std::string freezer_json(const kitchen::Plan& plan) {
    if (!plan.freezer_load) {
        return "null";
    }
    const auto& load = *plan.freezer_load;
    std::vector<std::string> batches;
    for (std::size_t i = 0; i < load.batches.size(); ++i) {
        batches.push_back(
            batch_json(load.batches[i], kitchen::add_days(plan.made, std::chrono::days{i})));
    }
    return fmt::format(
        R"({{"grams":{:.0f},"limit_grams":{:.0f},"batches":{},"elsewhere_grams":{:.0f},)"
        R"("elsewhere":{},"too_heavy":{},"without_weight":{}}})",
        load.total.grams, load.limit_high.grams, json_list(batches), load.elsewhere_weight.grams,
        json_strings(load.elsewhere), json_strings(load.too_heavy),
        json_strings(load.without_weight));
}

} // namespace

std::string check_json(const Days& days, const wording::Style& style) {
    std::vector<std::string> packages;
    std::vector<std::string> cautions;
    std::vector<std::string> freezers;
    for (const auto& plan : days.plans) {
        for (const auto& planned : plan.packages) {
            packages.push_back(package_json(planned, style));
        }
        for (const auto& caution : plan.cautions) {
            cautions.push_back(caution_json(caution, style));
        }
        freezers.push_back(freezer_json(plan));
    }
    return fmt::format(R"({{"packages":{},"cautions":{},"freezers":{}}})", json_list(packages),
                       json_list(cautions), json_list(freezers));
}

} // namespace thawslip::app
