#include "service/food_facts.h"

#include "base/list.h"
#include "intake/storage_file.h"
#include "kitchen/foods/food_reading.h"

#include <utility>

namespace thawslip::service {
namespace {

FoodFacts facts_of(const kitchen::StorageTable& table, const std::string& food,
                   std::vector<std::string> words) {
    const std::vector<std::string> alone{food};
    kitchen::Package package;
    package.food = alone;
    FoodFacts facts{food,
                    kitchen::find_storage(table, food),
                    kitchen::find_fridge_life(table, food),
                    std::nullopt,
                    kitchen::safe_minimum(table, package),
                    kitchen::find_unsuitable(table, food),
                    std::move(words)};
    if (facts.frozen) {
        facts.thawed = kitchen::days_left_after_thawing(table, alone, std::chrono::days{0});
    }
    return facts;
}

} // namespace

std::vector<FoodFacts> food_facts(const std::string& words, const std::string& storage_list,
                                  const std::string& language) {
    const auto table = intake::built_in_storage(storage_list);
    const auto kinds =
        words.empty() ? kitchen::all_kinds(table) : kitchen::kinds_near(table, words);
    auto words_of = kitchen::words_by_kind(table, language);
    return mapped(kinds, [&](const std::string& kind) {
        return facts_of(table, kind, std::move(words_of[kind]));
    });
}

std::string_view why_text(const kitchen::UnsuitableRow& row) {
    return row.why.empty() ? "does not freeze well" : std::string_view{row.why};
}

} // namespace thawslip::service
