#include "json/value.h"
#include "json/values.h"

namespace thawslip::json {
namespace {

template <class Row>
Json row_json(const Row& row, long low, long high, const char* unit) {
    return {{"low", low},     {"high", high},         {"unit", unit},        {"list", row.rule_set},
            {"row", row.row}, {"source", row.source}, {"status", row.status}};
}

Json frozen_json(const kitchen::StorageRow& row) {
    return row.high_weeks.count() > 0
               ? row_json(row, row.low_weeks.count(), row.high_weeks.count(), "weeks")
               : row_json(row, row.low.count(), row.high.count(), "months");
}

Json facts_json(const service::FoodFacts& facts) {
    const auto& [food, frozen, chilled, thawed, minimum, unsuitable, words] = facts;
    return {
        {"food", food},
        {"frozen", frozen ? frozen_json(*frozen) : Json{}},
        {"chilled", chilled
                        ? row_json(*chilled, chilled->low.count(), chilled->high.count(), "days")
                        : Json{}},
        {"thawed", thawed ? row_json(thawed->row, thawed->low.count(), thawed->high.count(), "days")
                          : Json{}},
        {"minimum_celsius", minimum ? Json(minimum->celsius) : Json{}},
        {"unsuitable", unsuitable ? Json(service::why_text(*unsuitable)) : Json{}},
        {"words", words}};
}

} // namespace

Json foods_json(std::span<const service::FoodFacts> facts) {
    return list_of(facts, facts_json);
}

} // namespace thawslip::json
